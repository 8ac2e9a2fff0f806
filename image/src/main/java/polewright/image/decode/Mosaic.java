package polewright.image.decode;

/**
 * Whether the pixels of a one-plane frame are behind a colour filter array.
 *
 * <p>The colours need not be known: each of the four phases of the 2 × 2 pattern is brought to the same level from its
 * own values ({@link BayerChannelBalance}).
 */
public enum Mosaic {
    /** As given by the header (BAYERPAT or COLORTYP); none if it has neither. */
    AS_THE_FILE_SAYS,
    /** There is one, according to the user, who sees a chequered frame. */
    BAYER,
    /** There is none, whatever the header says. */
    NONE
}
