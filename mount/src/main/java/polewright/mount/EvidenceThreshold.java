package polewright.mount;

/** Differences of χ² between two explanations at given odds: twice the logarithm of the likelihood ratio. */
public final class EvidenceThreshold {
    public static final double TEN_TO_ONE = 2 * Math.log(10);
    public static final double HUNDRED_TO_ONE = 2 * Math.log(100);

    private EvidenceThreshold() {}
}
