package polewright.report.text;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.HandTurns;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.event.NightEvent.ScrewsTurned;
import polewright.sky.PlainNumber;

/** An event in one line. */
public final class EventWords {
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

    public static String of(NightEvent event) {
        if (event instanceof NightEvent.Begun begun) {
            return begun(begun) + ", allowed " + begun.allowance().words();
        } else if (event instanceof NightEvent.SightingTaken taken) {
            return SightingWords.of(taken.sighting());
        } else if (event instanceof ScrewsTurned turned) {
            return "turned " + turns(turned);
        } else if (event instanceof NightEvent.TurnCorrected corrected) {
            return "in place of #" + corrected.seq() + ": turned " + turns(corrected.meant());
        } else if (event instanceof NightEvent.TurnNotLogged unlogged) {
            return "turned after #" + unlogged.seq() + ", but not logged then: " + screws(unlogged)
                    + ", by an unknown amount";
        } else if (event instanceof NightEvent.MeasurementCorrected corrected) {
            return "in place of #" + corrected.seq() + ": " + of(corrected.meant());
        } else if (event instanceof NightEvent.RigCorrected corrected) {
            return CorrectionWords.of(corrected.correction());
        } else if (event instanceof NightEvent.SiteCorrected corrected) {
            return "site corrected: " + AngleWords.site(corrected.site());
        } else if (event instanceof NightEvent.ClockCorrected corrected) {
            return "clock corrected for #" + corrected.seq() + " to #" + corrected.last() + ": "
                    + (corrected.shift().isNegative() ? "−" : "+") + minutes(corrected.shift());
        } else if (event instanceof NightEvent.Clamped) {
            return "clamped";
        } else if (event instanceof NightEvent.Unclamped) {
            return "unclamped";
        } else if (event instanceof NightEvent.Knocked) {
            return "knocked or moved";
        } else if (event instanceof NightEvent.AllowanceSet set) {
            return "allowed " + set.allowance().words();
        } else if (event instanceof NightEvent.WorkSet set) {
            return "work: " + set.work().items().stream().map(WorkItem::name).collect(Collectors.joining(", "));
        } else if (event instanceof NightEvent.StarCentred star) {
            return "centred " + star.centred().star().label();
        } else if (event instanceof NightEvent.HorizonSet set) {
            return "skyline of " + set.horizon().points().size() + " points";
        } else if (event instanceof NightEvent.TargetWanted wanted) {
            return "wanted: " + wanted.target().label();
        } else if (event instanceof NightEvent.SightingSkipped skipped) {
            return SkipWords.of(skipped.skip());
        } else if (event instanceof NightEvent.Noted noted) {
            return "note: " + noted.text();
        } else if (event instanceof NightEvent.Withdrawn withdrawn) {
            return "took back #" + withdrawn.seq();
        }
        throw new IllegalStateException("no words for " + event);
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

    private static String screws(NightEvent.TurnNotLogged unlogged) {
        return unlogged.azimuth() && unlogged.altitude()
                ? "one screw or both"
                : unlogged.azimuth() ? "the azimuth screw" : "the altitude screw";
    }
}
