/** @type {import('next').NextConfig} */
const config = {
  serverExternalPackages: ['@libsql/client', 'libsql', '@prisma/adapter-libsql'],
  poweredByHeader: false,
  reactStrictMode: true,
};

export default config;
