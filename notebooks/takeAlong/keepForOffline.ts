import type { PluginOption } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const paper = '#fbfaf6';

/** What lets a browser keep the built page, all files of it, and install it. The page itself asks for that. */
export function keepForOffline(): PluginOption {
  return VitePWA({
    // A newer version waits until the person takes it.
    registerType: 'prompt',
    injectRegister: false,
    manifest: {
      id: './',
      name: 'Stepwell',
      short_name: 'Stepwell',
      description: 'Live documents about flat-topped and ring-shaped laser spots.',
      lang: 'en',
      start_url: './',
      scope: './',
      display: 'standalone',
      background_color: paper,
      theme_color: paper,
      icons: [
        { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
        { src: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
        { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
        // The drawing keeps to the circle of 80 % that no mask may cut.
        { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      ],
    },
    workbox: {
      globPatterns: ['**/*.{html,js,css,woff2,svg,png}'],
      // All of it: a worker that is missing would be missed only without network.
      maximumFileSizeToCacheInBytes: 50e6,
      navigateFallback: 'index.html',
      // The page that is open when the keeping ends is served from it from then on.
      clientsClaim: true,
      cleanupOutdatedCaches: true,
      inlineWorkboxRuntime: true,
      sourcemap: false,
    },
  });
}
