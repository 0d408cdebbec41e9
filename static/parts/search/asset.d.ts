// Another file of the bundle as static/asset.go hands it over: its name in the assets folder and its sum.
declare module "asset:*" {
  export const asset: { file: string; integrity: string };
}
