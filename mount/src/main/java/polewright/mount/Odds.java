package polewright.mount;

/** Odds between two explanations, as the difference of χ² that corresponds to them: twice the logarithm of the likelihood ratio. */
public final class Odds {
    public static final double TEN_TO_ONE = 2 * Math.log(10);
    public static final double HUNDRED_TO_ONE = 2 * Math.log(100);

    private Odds() {}
}
