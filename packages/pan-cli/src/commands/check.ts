export const check = async () => 0 as const;
