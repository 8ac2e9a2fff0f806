package polewright.session.event;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.sighting.TurnedFrames;

/** The kinds of event, each with the word that identifies it in files and in the log. */
public enum EventKind {
    BEGIN("begin"),
    COMPASS("compass"),
    SCALE("scale"),
    BEARING("bearing"),
    SHADOW("shadow"),
    ALTITUDE("altitude"),
    STILL_POINT("still_point"),
    DRIFT("drift"),
    FRAMES("frames"),
    FIELD_DRIFT("field_drift"),
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
            return of(taken.sighting());
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

    private static EventKind of(Sighting sighting) {
        if (sighting instanceof CompassBearing) {
            return COMPASS;
        } else if (sighting instanceof LevelledScale) {
            return SCALE;
        } else if (sighting instanceof BodyBearing bearing) {
            return bearing.line() == BodyBearing.Line.SHADOW ? SHADOW : BEARING;
        } else if (sighting instanceof BodyAltitude) {
            return ALTITUDE;
        } else if (sighting instanceof StillPoint) {
            return STILL_POINT;
        } else if (sighting instanceof StarDrift) {
            return DRIFT;
        } else if (sighting instanceof TurnedFrames) {
            return FRAMES;
        } else if (sighting instanceof FieldDrift) {
            return FIELD_DRIFT;
        }
        throw new IllegalStateException("no kind for " + sighting.getClass());
    }
}
