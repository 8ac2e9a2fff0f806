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
    TRAIL(SightingFormat.TRAIL),
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

    private static final OfEvent OF_EVENT = new OfEvent();

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
        return event.accept(OF_EVENT);
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
            case TRAIL -> TRAIL;
            case FRAMES -> FRAMES;
            case FIELD_DRIFT -> FIELD_DRIFT;
        };
    }

    private static final class OfEvent implements EventVisitor<EventKind> {
        @Override
        public EventKind begun(NightEvent.Begun event) {
            return BEGIN;
        }

        @Override
        public EventKind sightingTaken(NightEvent.SightingTaken event) {
            return of(event.sighting().format());
        }

        @Override
        public EventKind screwsTurned(NightEvent.ScrewsTurned event) {
            return TURN;
        }

        @Override
        public EventKind turnCorrected(Correction.TurnCorrected event) {
            return CORRECT_TURN;
        }

        @Override
        public EventKind turnNotLogged(Correction.TurnNotLogged event) {
            return UNLOGGED_TURN;
        }

        @Override
        public EventKind measurementCorrected(Correction.MeasurementCorrected event) {
            return of(event.meant());
        }

        @Override
        public EventKind rigCorrected(Correction.RigCorrected event) {
            return RIG;
        }

        @Override
        public EventKind siteCorrected(Correction.SiteCorrected event) {
            return SITE;
        }

        @Override
        public EventKind clockCorrected(Correction.ClockCorrected event) {
            return CORRECT_CLOCK;
        }

        @Override
        public EventKind clamped(NightEvent.Clamped event) {
            return CLAMP;
        }

        @Override
        public EventKind unclamped(NightEvent.Unclamped event) {
            return UNCLAMP;
        }

        @Override
        public EventKind knocked(NightEvent.Knocked event) {
            return KNOCK;
        }

        @Override
        public EventKind allowanceSet(NightEvent.AllowanceSet event) {
            return ALLOW;
        }

        @Override
        public EventKind workSet(NightEvent.WorkSet event) {
            return WORK;
        }

        @Override
        public EventKind starCentred(NightEvent.StarCentred event) {
            return CENTRE;
        }

        @Override
        public EventKind horizonSet(NightEvent.HorizonSet event) {
            return HORIZON;
        }

        @Override
        public EventKind targetWanted(NightEvent.TargetWanted event) {
            return TARGET;
        }

        @Override
        public EventKind sightingSkipped(NightEvent.SightingSkipped event) {
            return SKIP;
        }

        @Override
        public EventKind noted(NightEvent.Noted event) {
            return NOTE;
        }

        @Override
        public EventKind withdrawn(NightEvent.Withdrawn event) {
            return WITHDRAW;
        }
    }
}
