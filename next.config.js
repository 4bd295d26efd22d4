/** @type {import('next').NextConfig} */
const config = {
  distDir: process.env.BENCHTAKE_DIST_DIR ?? '.next',
  serverExternalPackages: ['@libsql/client', 'libsql', '@prisma/adapter-libsql'],
  poweredByHeader: false,
  reactStrictMode: true,
};

export default config;
