package polewright.web.night;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;

/** What becomes of the night's time: it is asked for when something is logged. */
final class DeskClock extends Clock {
    private final NightDesk desk;

    DeskClock(NightDesk desk) {
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
