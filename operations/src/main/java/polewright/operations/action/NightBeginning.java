package polewright.operations.action;

import java.util.List;
import java.util.Optional;
import polewright.alignment.allowance.ZoneOutcome;
import polewright.alignment.work.Work;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.place.Horizon;

/** The outcome of beginning a night. */
public sealed interface NightBeginning {
    /** The event of the beginning. */
    LoggedEvent event();

    /** The night now. */
    NightState after();

    /**
     * It has begun.
     *
     * @param begun the same event
     * @param work what it is for, and where that comes from
     * @param skyline carried over from the last night at this site
     * @param notCopied why the log could not be backed up first, if that failed
     */
    record Begun(
            LoggedEvent event,
            NightEvent.Begun begun,
            NightState after,
            BeginningWork work,
            Optional<Horizon> skyline,
            Optional<String> notCopied,
            List<EntryNotice> notices)
            implements NightBeginning {
        public Begun {
            notices = List.copyOf(notices);
        }
    }

    /** It had already begun: the sender had not received the answer. */
    record AlreadyBegun(LoggedEvent event, NightState after) implements NightBeginning {}

    /**
     * The work of a night that begins.
     *
     * @param work to log after the beginning; empty if a plain limit applies
     * @param isCarriedOver whether it is that of the last night
     * @param notCarriedOver why the last night's work does not suit this one
     */
    record BeginningWork(Optional<Work> work, boolean isCarriedOver, Optional<Unsuitable> notCarriedOver) {
        /** A plain limit. */
        public static final BeginningWork NONE = new BeginningWork(Optional.empty(), false, Optional.empty());

        /** That of the last night. */
        public static BeginningWork carriedOver(Work work) {
            return new BeginningWork(Optional.of(work), true, Optional.empty());
        }

        /** A plain limit, because the last night's work does not suit this one. */
        public static BeginningWork notCarriedOver(Unsuitable why) {
            return new BeginningWork(Optional.empty(), false, Optional.of(why));
        }
    }

    /** Why the last night's work does not suit this one. */
    sealed interface Unsuitable {
        <R> R accept(Visitor<R> visitor);

        /** No axis suits it. */
        record NoAxis(ZoneOutcome.None outcome) implements Unsuitable {
            @Override
            public <R> R accept(Visitor<R> visitor) {
                return visitor.noAxis(this);
            }
        }

        /** Its part of the sky cannot be observed from this site; the message says why. */
        record NotHere(String message) implements Unsuitable {
            @Override
            public <R> R accept(Visitor<R> visitor) {
                return visitor.notHere(this);
            }
        }

        /** One method for each reason. */
        interface Visitor<R> {
            R noAxis(NoAxis none);

            R notHere(NotHere reason);
        }
    }
}
