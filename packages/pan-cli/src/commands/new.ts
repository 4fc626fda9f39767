export const newDesign = async () => 0 as const;
