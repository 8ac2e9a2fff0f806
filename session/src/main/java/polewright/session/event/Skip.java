package polewright.session.event;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import polewright.alignment.advice.SightingKind;
import polewright.sky.InputRefused;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

/**
 * A sighting that cannot be taken, with the observer's reason.
 *
 * @param sighting the sighting advised
 * @param because why it cannot be taken
 * @param star the star it was to be taken on, if the reason concerns that star or its position
 * @param optic the optic that is not at hand; only for that reason
 */
public record Skip(Sighting sighting, Reason because, Optional<SkyBody> star, Optional<String> optic) {
    /** The sighting advised. */
    public enum Sighting {
        COMPASS("the compass"),
        SCALE("level and scale"),
        SHADOW("the shadow"),
        STILL_POINT("the centre of rotation"),
        DRIFT("a drift"),
        FRAMES("camera frames");

        private final String words;

        Sighting(String words) {
            this.words = words;
        }

        /** The one for advice of this kind. */
        public static Sighting of(SightingKind kind) {
            return switch (kind) {
                case COMPASS -> COMPASS;
                case LEVEL_AND_SCALE -> SCALE;
                case SHADOW -> SHADOW;
                case STILL_POINT -> STILL_POINT;
                case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST -> DRIFT;
                case FRAMES -> FRAMES;
            };
        }

        /** The kinds of sighting that it covers. */
        public Set<SightingKind> kinds() {
            return Arrays.stream(SightingKind.values())
                    .filter(kind -> of(kind) == this)
                    .collect(Collectors.toUnmodifiableSet());
        }

        /** Whether it is taken on a star. */
        public boolean isOfStar() {
            return this == STILL_POINT || this == DRIFT;
        }

        /** In two or three words. */
        public String words() {
            return words;
        }
    }

    /** Why it cannot be taken. */
    public enum Reason {
        /** The star was looked for and not found. */
        NOT_FOUND,
        /** The pole star is outside the field when the tube is parallel to the axis. */
        NOT_IN_VIEW,
        /** A tree, a roof or a hill is in front of the star. */
        HIDDEN,
        /** A cloud covers the star, the Sun, or the camera's field. */
        CLOUD,
        /** The eyepiece or finder is not at hand. */
        NO_OPTIC,
        /** The compass, the scale, the plumb line or the camera is not at hand. */
        NO_INSTRUMENT;

        /** Whether this reason can apply to such a sighting. */
        public boolean isOf(Sighting sighting) {
            return switch (this) {
                case NOT_FOUND, HIDDEN, NO_OPTIC -> sighting.isOfStar();
                case NOT_IN_VIEW -> sighting == Sighting.STILL_POINT;
                case CLOUD -> sighting.isOfStar() || sighting == Sighting.SHADOW || sighting == Sighting.FRAMES;
                case NO_INSTRUMENT -> !sighting.isOfStar();
            };
        }

        private String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public Skip {
        if (!because.isOf(sighting)) {
            throw new InputRefused(
                    "'" + because.word() + "' does not apply to " + sighting.words(),
                    "give one of: " + reasons(sighting));
        }
        boolean isAboutStar = sighting.isOfStar() && because != Reason.NO_OPTIC;
        if (isAboutStar != star.isPresent()) {
            throw isAboutStar
                    ? new InputRefused("the star is missing", "give the star that was to be sighted")
                    : new InputRefused(
                            "a star is named, but '" + because.word() + "' of " + sighting.words() + " needs none",
                            "leave the star out");
        }
        if (star.filter(body -> body == SolarSystemBody.SUN).isPresent()) {
            throw new InputRefused("never point the tube at the Sun", "name a star");
        }
        if ((because == Reason.NO_OPTIC) != optic.isPresent()) {
            throw new InputRefused(
                    optic.isPresent()
                            ? "an optic is named, but the reason is '" + because.word() + "'"
                            : "the optic is missing",
                    optic.isPresent() ? "leave the optic out" : "give the optic that is missing");
        }
    }

    private static String reasons(Sighting sighting) {
        return Arrays.stream(Reason.values())
                .filter(reason -> reason.isOf(sighting))
                .map(Reason::word)
                .collect(Collectors.joining(", "));
    }
}
