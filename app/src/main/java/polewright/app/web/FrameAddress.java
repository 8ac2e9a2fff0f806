package polewright.app.web;

/** Where a desk's frames are, within it. */
public final class FrameAddress {
    /** The page. */
    public static final String PAGE = "/frames";

    /** The newest frame's light: {@code times}, {@code x} and {@code y}, in thousandths, name a part; {@code n} its number. */
    public static final String LIGHT = "/frames/newest.png";

    /** Where one is sent. */
    public static final String UPLOAD = "/frames/upload";

    /** That the screws are where they are to be. */
    public static final String SETTLED = "/frames/settled";

    private FrameAddress() {}
}
