/** Standard gravity (CGPM 1901), mm/s². */
export const GRAVITY = 9806.65;

/** Mean speed through a round mouth, mm/s from mm and mm³/s. */
export const mouthSpeed = (mouth: number, flow: number): number => flow / ((Math.PI * mouth ** 2) / 4);

/** Fr = V/√(gD) at a round mouth. */
export const mouthFroude = (mouth: number, flow: number): number =>
  mouthSpeed(mouth, flow) / Math.sqrt(GRAVITY * mouth);

/**
 * Critical submergence S = D(1 + 2.3·Fr), Fr = V/√(gD) at the mouth: ANSI/HI 9.8, for water. Below intake
 * Reynolds numbers of about 3–7·10⁴ it is indicative only. mm from mm and mm³/s.
 */
export const criticalSubmergence = (mouth: number, flow: number): number =>
  mouth * (1 + 2.3 * mouthFroude(mouth, flow));
