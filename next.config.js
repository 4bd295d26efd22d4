/** @type {import('next').NextConfig} */
const config = {
  distDir: process.env.BENCHTAKE_DIST_DIR ?? '.next',
  serverExternalPackages: ['@libsql/client', 'libsql', '@prisma/adapter-libsql', 'sharp', 'date-holidays'],
  poweredByHeader: false,
  reactStrictMode: true,
  // `npm run check` holds the types of everything; a start need not read the tests a second time.
  typescript: { ignoreBuildErrors: true },
};

export default config;
