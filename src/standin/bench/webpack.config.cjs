// The bench's own bundle. The add-in's bundles are taken as `npm run build` makes them, unchanged; nothing
// of the bench or of the Office.js package goes the other way.
const { resolve } = require("node:path");
const CopyPlugin = require("copy-webpack-plugin");

const root = resolve(__dirname, "../../..");

module.exports = {
  mode: "production",
  context: root,
  entry: { bench: "./src/standin/bench/main.ts" },
  output: {
    path: resolve(root, "out/bench"),
    filename: "[name].js",
    chunkFilename: "bench-[id].js",
    clean: true,
  },
  resolve: { extensions: [".ts", ".tsx", ".js"] },
  module: {
    rules: [
      {
        test: /\.tsx?$/,
        loader: "esbuild-loader",
        options: { target: "es2022", jsx: "automatic" },
      },
      { test: /\.css$/, loader: "esbuild-loader", options: { loader: "css" }, type: "css/auto" },
    ],
  },
  experiments: { css: true },
  optimization: { minimize: false },
  performance: { hints: false },
  plugins: [
    new CopyPlugin({
      patterns: [
        { from: "src/standin/bench/bench.html", to: "index.html" },
        {
          from: require.resolve("@microsoft/office-js/dist/excel-web-16.00.debug.js"),
          to: "excel-client.js",
        },
        { from: "dist/*.js", to: "[name][ext]" },
        { from: "sample-workbooks/harbour-substation.lineup.json", to: "[name][ext]" },
        { from: "out/harbour-substation.xlsx", to: "[name][ext]", noErrorOnMissing: true },
      ],
    }),
  ],
};
