package polewright.web.session;

/** Where the game's pages are. */
public final class PracticeAddress {
    /** Screws and instruments. */
    public static final String GAME = "/practice";

    /** What the addresses of the practice's own night begin with. */
    public static final String NIGHT = "/practice/night";

    /** The truth, and where the minutes went. */
    public static final String DEBRIEF = "/practice/debrief";

    private PracticeAddress() {}
}
