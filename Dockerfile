# The API with the board, and the worker: one image, the command decides.
FROM node:20-bookworm-slim AS build
WORKDIR /app
COPY . .
RUN node scripts/build.mjs && npm prune --omit=dev

FROM node:20-bookworm-slim
ENV NODE_ENV=production HOST=0.0.0.0
WORKDIR /app
COPY --from=build --chown=node:node /app ./
USER node
EXPOSE 4300
CMD ["node", "--enable-source-maps", "apps/api/dist/main.js"]
