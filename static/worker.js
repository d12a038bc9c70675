// The same module, in a worker: the addresses of glue and module come in the worker's name.
const [glue, module] = self.name.split(" ");
const page = await import(glue);
await page.default({ module_or_path: module });
