package polewright.web.session;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;

/** The session's current time, looked up each time an event is logged. */
final class SessionClock extends Clock {
    private final NightSession session;

    SessionClock(NightSession session) {
        this.session = session;
    }

    @Override
    public Instant instant() {
        return session.workbench().clock().instant();
    }

    @Override
    public ZoneId getZone() {
        return session.workbench().clock().getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return session.workbench().clock().withZone(zone);
    }
}
