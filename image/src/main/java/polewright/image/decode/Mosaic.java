package polewright.image.decode;

/**
 * Whether the pixels of a one-plane frame lie under a mosaic of colour filters.
 *
 * <p>Which colour is where is not asked: each of the four phases of the 2 × 2 pattern is brought to the same level by what
 * it recorded itself ({@link BayerChannelBalance}).
 */
public enum Mosaic {
    /** As the header says (BAYERPAT or COLORTYP); without a word of it, there is none. */
    AS_THE_FILE_SAYS,
    /** There is one, told by the person, who sees a chequered frame. */
    BAYER,
    /** There is none, whatever the header says. */
    NONE
}
