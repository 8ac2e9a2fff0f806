package polewright.operations.action;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import polewright.session.DoubtfulSite;
import polewright.sky.body.SkyBody;

/** Something worth saying about a valid entry, once it is logged. */
public sealed interface EntryNotice {
    <R> R accept(Visitor<R> visitor);

    /** One method for each kind. */
    interface Visitor<R> {
        R oddSite(OddSite notice);

        R followed(Followed notice);
    }

    /**
     * The site does not agree with what else is known about where the person is. On a page it is asked about first.
     *
     * @param zone the computer's time zone
     */
    record OddSite(DoubtfulSite site, ZoneId zone) implements EntryNotice, LooksMistaken.Doubt {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.oddSite(this);
        }
    }

    /** A body will be followed for some time, which matters near the Sun. */
    record Followed(SkyBody body, Instant from, Duration length) implements EntryNotice {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.followed(this);
        }
    }
}
