/** Hatchings that every drawing of the page may fill with: level strokes for the mouth's oil, dots for oil cut off from it, earth. */
export const Hatches = () => (
  <svg class="hatches" width="0" height="0" aria-hidden="true" focusable="false">
    <defs>
      <pattern id="hatch-mine" patternUnits="userSpaceOnUse" width="26" height="14">
        <path d="M1 3.5h12M16 10.5h9" />
      </pattern>
      <pattern id="hatch-apart" patternUnits="userSpaceOnUse" width="12" height="12">
        <path d="M2.2 3h1.6M8.2 9h1.6" />
      </pattern>
      <pattern
        id="hatch-solid"
        patternUnits="userSpaceOnUse"
        width="8"
        height="8"
        patternTransform="rotate(-45)"
      >
        <path d="M0 0V8" />
      </pattern>
    </defs>
  </svg>
);
