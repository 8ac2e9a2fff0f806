package polewright.session.event;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.sighting.SightingFormat;

/** The kinds of event, each with the word that identifies it in files and in the log. */
public enum EventKind {
    BEGIN("begin"),
    COMPASS(SightingFormat.COMPASS),
    SCALE(SightingFormat.SCALE),
    BEARING(SightingFormat.BEARING),
    SHADOW(SightingFormat.SHADOW),
    ALTITUDE(SightingFormat.ALTITUDE),
    STILL_POINT(SightingFormat.STILL_POINT),
    DRIFT(SightingFormat.DRIFT),
    FRAMES(SightingFormat.FRAMES),
    FIELD_DRIFT(SightingFormat.FIELD_DRIFT),
    TURN("turn"),
    CORRECT_TURN("correct_turn"),
    UNLOGGED_TURN("unlogged_turn"),
    CORRECT_CLOCK("correct_clock"),
    RIG("rig"),
    SITE("site"),
    CLAMP("clamp"),
    UNCLAMP("unclamp"),
    KNOCK("knock"),
    ALLOW("allow"),
    WORK("work"),
    CENTRE("centre"),
    HORIZON("horizon"),
    TARGET("target"),
    SKIP("skip"),
    NOTE("note"),
    WITHDRAW("withdraw");

    private final String word;

    EventKind(String word) {
        this.word = word;
    }

    EventKind(SightingFormat format) {
        this(format.word());
    }

    public String word() {
        return word;
    }

    public static Optional<EventKind> ofWord(String word) {
        return Arrays.stream(values()).filter(k -> k.word.equals(word)).findFirst();
    }

    /** All the words, separated by commas. */
    public static String words() {
        return Arrays.stream(values()).map(EventKind::word).collect(Collectors.joining(", "));
    }

    /** The kind of an event; a measurement that replaces another has the kind of the replacement. */
    public static EventKind of(NightEvent event) {
        if (event instanceof NightEvent.SightingTaken taken) {
            return of(taken.sighting().format());
        } else if (event instanceof NightEvent.Begun) {
            return BEGIN;
        } else if (event instanceof NightEvent.ScrewsTurned) {
            return TURN;
        } else if (event instanceof NightEvent.TurnCorrected) {
            return CORRECT_TURN;
        } else if (event instanceof NightEvent.TurnNotLogged) {
            return UNLOGGED_TURN;
        } else if (event instanceof NightEvent.ClockCorrected) {
            return CORRECT_CLOCK;
        } else if (event instanceof NightEvent.MeasurementCorrected corrected) {
            return of(corrected.meant());
        } else if (event instanceof NightEvent.RigCorrected) {
            return RIG;
        } else if (event instanceof NightEvent.SiteCorrected) {
            return SITE;
        } else if (event instanceof NightEvent.Clamped) {
            return CLAMP;
        } else if (event instanceof NightEvent.Unclamped) {
            return UNCLAMP;
        } else if (event instanceof NightEvent.Knocked) {
            return KNOCK;
        } else if (event instanceof NightEvent.AllowanceSet) {
            return ALLOW;
        } else if (event instanceof NightEvent.WorkSet) {
            return WORK;
        } else if (event instanceof NightEvent.StarCentred) {
            return CENTRE;
        } else if (event instanceof NightEvent.HorizonSet) {
            return HORIZON;
        } else if (event instanceof NightEvent.TargetWanted) {
            return TARGET;
        } else if (event instanceof NightEvent.SightingSkipped) {
            return SKIP;
        } else if (event instanceof NightEvent.Noted) {
            return NOTE;
        } else if (event instanceof NightEvent.Withdrawn) {
            return WITHDRAW;
        }
        throw new IllegalStateException("no kind for " + event.getClass());
    }

    /** The switch is exhaustive, so a new kind of sighting does not compile here without its kind of event. */
    private static EventKind of(SightingFormat format) {
        return switch (format) {
            case COMPASS -> COMPASS;
            case SCALE -> SCALE;
            case BEARING -> BEARING;
            case SHADOW -> SHADOW;
            case ALTITUDE -> ALTITUDE;
            case STILL_POINT -> STILL_POINT;
            case DRIFT -> DRIFT;
            case FRAMES -> FRAMES;
            case FIELD_DRIFT -> FIELD_DRIFT;
        };
    }
}
