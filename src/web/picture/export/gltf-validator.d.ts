/** What is used of the validator of the Khronos Group, which brings no types. */
declare module "gltf-validator" {
  export function validateBytes(bytes: Uint8Array): Promise<{
    issues: {
      numErrors: number;
      /** Severity 0 is an error, 1 a warning. */
      messages: { code: string; message: string; severity: number; pointer?: string }[];
    };
  }>;
}
