FROM node:22-slim AS build
WORKDIR /sheafbook
COPY package.json package-lock.json .npmrc ./
COPY apps/api/package.json apps/api/
COPY apps/web/package.json apps/web/
COPY db/package.json db/
COPY packages/coverage/package.json packages/coverage/
COPY packages/foods/package.json packages/foods/
COPY packages/ledger/package.json packages/ledger/
COPY packages/sharing/package.json packages/sharing/
COPY packages/solve/package.json packages/solve/
COPY packages/units/package.json packages/units/
COPY tests/package.json tests/
RUN npm ci
COPY . .
RUN npm run build && npm prune --omit=dev

# tsx runs the server's TypeScript as it is; only the web is built.
FROM node:22-slim
WORKDIR /sheafbook
COPY --from=build /sheafbook .
USER node
EXPOSE 4180
CMD ["node", "--import", "tsx", "apps/api/src/main.ts"]
