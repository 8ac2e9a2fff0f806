package polewright.sky.magnetic;

/**
 * How far a compass can be trusted in the local field, by the zones of the World Magnetic Model's report: near the
 * magnetic poles the horizontal field that turns the needle is too weak.
 */
public enum CompassTrust {
    /** Horizontal intensity of 6000 nT and more. */
    NORMAL,
    /** 2000 to 6000 nT: the report's caution zone; a compass may err by several degrees. */
    CAUTION,
    /** Under 2000 nT: the report's blackout zone; a compass is of no use. */
    USELESS;

    private static final double CAUTION_BELOW_NANOTESLA = 6000;
    private static final double USELESS_BELOW_NANOTESLA = 2000;

    static CompassTrust at(double horizontalNanotesla) {
        if (horizontalNanotesla < USELESS_BELOW_NANOTESLA) {
            return USELESS;
        }
        return horizontalNanotesla < CAUTION_BELOW_NANOTESLA ? CAUTION : NORMAL;
    }
}
