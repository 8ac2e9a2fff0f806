package polewright.alignment.advice;

/** Which sightings the Sun permits. */
public enum Daylight {
    /** The Sun is down: stars can be sighted. */
    NONE,
    /** The Sun is up, but too low or too high to measure a plumb line's shadow: neither stars nor shadow. */
    NO_SHADOW,
    /** The Sun is up, and a plumb line's shadow can be measured. */
    SHADOW
}
