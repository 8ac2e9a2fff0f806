package polewright.sky.time;

/**
 * The time scales used here. UTC is stored as SOFA's quasi-Julian date, whose day is 86401 s long on a leap-second day.
 */
public enum TimeScale {
    UTC,
    UT1,
    TAI,
    TT
}
