package polewright.sky.time;

/**
 * A Julian date in two parts, so that microseconds are preserved.
 *
 * @param scale its time scale
 * @param day the large part, days
 * @param fraction the small part, days
 */
public record JulianDate(TimeScale scale, double day, double fraction) {
    /** Days since JD 0; accurate to about 20 microseconds. */
    public double total() {
        return day + fraction;
    }

    /** Julian centuries of 36525 days since J2000.0 (JD 2451545.0) in this scale. */
    public double centuriesSinceJ2000() {
        return ((day - 2451545.0) + fraction) / 36525.0;
    }
}
