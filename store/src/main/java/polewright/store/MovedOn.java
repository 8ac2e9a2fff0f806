package polewright.store;

/** Nothing was logged, because the log is no longer as whoever sent it knew it. The message is shown as it stands. */
public final class MovedOn extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private MovedOn(String message) {
        super(message);
    }

    static MovedOn toAnotherNight() {
        return new MovedOn("Not logged: another night has begun since. If it belongs to that one, enter it again.");
    }

    static MovedOn toAnotherEvent() {
        return new MovedOn("Not logged: something else was logged since, by another device or a frame."
                + " Look at how it stands now; enter again what you did.");
    }
}
