package polewright.web.session;

/** Addresses of the practice's pages. */
public final class PracticeAddress {
    /** Screws and instruments. */
    public static final String GAME = "/practice";

    /** The prefix of the addresses of the practice's own night. */
    public static final String NIGHT = "/practice/night";

    /** The truth, and where the time was spent. */
    public static final String DEBRIEF = "/practice/debrief";

    private PracticeAddress() {}
}
