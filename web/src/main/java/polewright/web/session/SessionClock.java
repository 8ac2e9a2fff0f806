package polewright.web.session;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;

/** What becomes of the night's time: it is asked for when something is logged. */
final class SessionClock extends Clock {
    private final NightSession desk;

    SessionClock(NightSession desk) {
        this.desk = desk;
    }

    @Override
    public Instant instant() {
        return desk.workbench().clock().instant();
    }

    @Override
    public ZoneId getZone() {
        return desk.workbench().clock().getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return desk.workbench().clock().withZone(zone);
    }
}
