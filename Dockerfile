FROM node:22-slim
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
# tsx runs the TypeScript as it is, so there is nothing to build.
RUN npm ci --omit=dev
COPY . .
USER node
EXPOSE 4180
CMD ["npx", "tsx", "apps/api/src/main.ts"]
