package polewright.report.text;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.HandTurns;
import polewright.session.event.Correction;
import polewright.session.event.EventVisitor;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.event.NightEvent.ScrewsTurned;
import polewright.sky.PlainNumber;

/** An event in one line. */
public final class EventWords {
    private static final Words WORDS = new Words();

    private EventWords() {}

    public static boolean isWithdrawal(LoggedEvent logged) {
        return logged.event() instanceof NightEvent.Withdrawn;
    }

    /**
     * An event among the others of its night: a beginning with work taken over omits the plain limit, which the work
     * replaces.
     *
     * @param night events in effect
     */
    public static String of(LoggedEvent logged, List<LoggedEvent> night) {
        boolean isReplaced = logged.event() instanceof NightEvent.Begun
                && night.stream()
                        .anyMatch(other ->
                                other.event() instanceof NightEvent.WorkSet && other.seq() == logged.seq() + 1);
        return isReplaced ? begun((NightEvent.Begun) logged.event()) : of(logged.event());
    }

    /**
     * {@code  (replaced by #9)} for a corrected event; otherwise empty.
     *
     * @param replacements the replaced events with their replacements
     */
    public static String replaced(LoggedEvent logged, Map<Long, Long> replacements) {
        Long by = replacements.get(logged.seq());
        return by == null ? "" : " (replaced by #" + by + ")";
    }

    /** The displayed name of a kind of sighting. */
    public static String kind(String kind) {
        return kind.equals(StillPoint.KIND) ? "centre of rotation" : kind;
    }

    /**
     * An event that was just logged; for a withdrawal, also what it took back.
     *
     * @param night all events before it
     */
    public static String logged(NightEvent event, List<LoggedEvent> night) {
        return event instanceof NightEvent.Withdrawn withdrawn
                ? of(withdrawn) + withdrawn(withdrawn.seq(), night)
                : of(event);
    }

    private static String withdrawn(long seq, List<LoggedEvent> night) {
        return night.stream()
                .filter(earlier -> earlier.seq() == seq)
                .findFirst()
                .map(earlier -> " (" + of(earlier.event()) + (isWithdrawal(earlier) ? ", which counts again)" : ")"))
                .orElse("");
    }

    public static String of(NightEvent event) {
        return event.accept(WORDS);
    }

    /** Without the plain limit, which work replaces. */
    static String begun(NightEvent.Begun begun) {
        return "begun at " + begun.siteName() + " with " + begun.rig().name();
    }

    private static String minutes(Duration shift) {
        return minutes(PlainNumber.of(shift.abs().toSeconds() / 60.0));
    }

    static String minutes(String number) {
        return number + (number.equals("1") ? " minute" : " minutes");
    }

    private static String turns(ScrewsTurned turned) {
        List<String> screws = new ArrayList<>();
        addTurns(screws, "altitude", turned.altitude());
        addTurns(screws, "azimuth", turned.azimuth());
        return String.join(", ", screws) + (turned.isSeenByFrames() ? ", measured by camera frames" : "");
    }

    private static void addTurns(List<String> screws, String screw, HandTurns turns) {
        if (turns.sigma() > 0 && turns.net() != 0) {
            screws.add(screw + " about " + PlainNumber.of(Math.rint(Math.abs(turns.net()) * 10) / 10)
                    + (turns.net() > 0 ? " clockwise" : " counter-clockwise"));
        } else if (turns.isPastAndBack()) {
            screws.add(screw + " " + oneWay(turns.outward()) + " then " + oneWay(turns.back()));
        } else if (turns.net() != 0) {
            screws.add(screw + " " + oneWay(turns.net()));
        }
    }

    private static String oneWay(double turns) {
        return Fractions.turns(turns) + (turns > 0 ? " clockwise" : " counter-clockwise");
    }

    private static String screws(Correction.TurnNotLogged unlogged) {
        return unlogged.azimuth() && unlogged.altitude()
                ? "one screw or both"
                : unlogged.azimuth() ? "the azimuth screw" : "the altitude screw";
    }

    private static final class Words implements EventVisitor<String> {
        @Override
        public String begun(NightEvent.Begun event) {
            return EventWords.begun(event) + ", allowed " + event.allowance().words();
        }

        @Override
        public String sightingTaken(NightEvent.SightingTaken event) {
            return SightingWords.of(event.sighting());
        }

        @Override
        public String screwsTurned(NightEvent.ScrewsTurned event) {
            return "turned " + turns(event);
        }

        @Override
        public String turnCorrected(Correction.TurnCorrected event) {
            return "in place of #" + event.seq() + ": turned " + turns(event.meant());
        }

        @Override
        public String turnNotLogged(Correction.TurnNotLogged event) {
            return "turned after #" + event.seq() + ", but not logged then: " + screws(event)
                    + ", by an unknown amount";
        }

        @Override
        public String measurementCorrected(Correction.MeasurementCorrected event) {
            return "in place of #" + event.seq() + ": " + of(event.meant());
        }

        @Override
        public String rigCorrected(Correction.RigCorrected event) {
            return CorrectionWords.of(event.correction());
        }

        @Override
        public String siteCorrected(Correction.SiteCorrected event) {
            return "site corrected: " + AngleWords.site(event.site());
        }

        @Override
        public String clockCorrected(Correction.ClockCorrected event) {
            return "clock corrected for #" + event.seq() + " to #" + event.last() + ": "
                    + (event.shift().isNegative() ? "−" : "+") + minutes(event.shift());
        }

        @Override
        public String clamped(NightEvent.Clamped event) {
            return "clamped";
        }

        @Override
        public String unclamped(NightEvent.Unclamped event) {
            return "unclamped";
        }

        @Override
        public String knocked(NightEvent.Knocked event) {
            return "knocked or moved";
        }

        @Override
        public String allowanceSet(NightEvent.AllowanceSet event) {
            return "allowed " + event.allowance().words();
        }

        @Override
        public String workSet(NightEvent.WorkSet event) {
            return "work: " + event.work().items().stream().map(WorkItem::name).collect(Collectors.joining(", "));
        }

        @Override
        public String starCentred(NightEvent.StarCentred event) {
            return "centred " + event.centred().star().label();
        }

        @Override
        public String horizonSet(NightEvent.HorizonSet event) {
            return "skyline of " + event.horizon().points().size() + " points";
        }

        @Override
        public String targetWanted(NightEvent.TargetWanted event) {
            return "wanted: " + event.target().label();
        }

        @Override
        public String sightingSkipped(NightEvent.SightingSkipped event) {
            return SkipWords.of(event.skip());
        }

        @Override
        public String noted(NightEvent.Noted event) {
            return "note: " + event.text();
        }

        @Override
        public String withdrawn(NightEvent.Withdrawn event) {
            return "took back #" + event.seq();
        }
    }
}
