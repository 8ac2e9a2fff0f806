package polewright.alignment.advice;

/** What the Sun lets be sighted. */
public enum Daylight {
    /** The Sun is down: stars. */
    NONE,
    /** The Sun is up, but too low or too high for a plumb line's shadow: neither stars nor shadow. */
    NO_SHADOW,
    /** The Sun is up and a plumb line casts a shadow to measure by. */
    SHADOW
}
