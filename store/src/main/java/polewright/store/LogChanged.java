package polewright.store;

/** Nothing was logged, because the log has changed since the sender last saw it. The message is shown as is. */
public final class LogChanged extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private LogChanged(String message) {
        super(message);
    }

    static LogChanged toAnotherNight() {
        return new LogChanged("Not logged: another night has begun since. If it belongs to that one, enter it again.");
    }

    static LogChanged toAnotherEvent() {
        return new LogChanged("Not logged: something else was logged since, by another device or a frame."
                + " Check the present state, then enter again what you did.");
    }
}
