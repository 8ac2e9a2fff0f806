package polewright.alignment.advice;

import java.util.Optional;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;

/** Kinds of sighting that can be advised, with an instruction in plain words. */
public enum SightingKind {
    COMPASS(CompassBearing.class, "read the compass along the axis, toward the pole"),
    SHADOW(BodyBearing.class, "measure the angle from a plumb line's shadow to the axis"),
    LEVEL_AND_SCALE(LevelledScale.class, "level the base and read the wedge's scale"),
    STILL_POINT(
            StillPoint.class,
            "point the tube at the pole, swing it back and forth in right ascension, and note where the pole star is"
                    + " from the centre of rotation"),
    DRIFT_ON_MERIDIAN(StarDrift.class, "track a star near the meridian, and see how far it drifts north or south"),
    DRIFT_EAST_OR_WEST(StarDrift.class, "track a star in the east or west, and see how far it drifts north or south"),
    FRAMES(
            TurnedFrames.class,
            "take a frame, turn right ascension and nothing else by about 60 degrees, and take another"
                    + " (a third from half-way checks the two)");

    private final Class<? extends Sighting> type;
    private final String words;

    SightingKind(Class<? extends Sighting> type, String words) {
        this.type = type;
        this.words = words;
    }

    /** The type of sighting that is logged when it is taken. */
    public Class<? extends Sighting> type() {
        return type;
    }

    /** The optic of the rig to use for it, if any. */
    public Optional<Optic> optic(Rig rig) {
        return switch (this) {
            // The still point needs a wide field, a drift high magnification.
            case STILL_POINT -> rig.widestOptic();
            case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST -> rig.finestOptic();
            case COMPASS, SHADOW, LEVEL_AND_SCALE, FRAMES -> Optional.empty();
        };
    }

    /** The instruction, as an imperative without a full stop. */
    public String words() {
        return words;
    }
}
