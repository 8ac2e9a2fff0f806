package polewright.planning.tonight;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.DeepSkyKind;
import polewright.sky.atlas.DeepSkyList;
import polewright.sky.atlas.DeepSkyObject;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

/**
 * A possible target.
 *
 * @param body for its position
 * @param kind in plain words, e.g. {@code open cluster}
 * @param magnitude integrated; empty if unknown
 * @param major major axis; zero if unknown, or a point
 * @param minor minor axis
 * @param renown how well known it is
 * @param isWanted whether the user requested it
 */
public record Target(
        SkyBody body,
        String kind,
        OptionalDouble magnitude,
        Angle major,
        Angle minor,
        Renown renown,
        boolean isWanted) {
    /** How well known something is among observers, which indicates how rewarding it is. */
    public enum Renown {
        /** A Messier object, the Moon, or a planet. */
        FAMOUS,
        /** It has a common name. */
        NAMED,
        /** The rest of the two large catalogues, NGC and IC. */
        LISTED
    }

    /** Determines how much moonlight and the kind of work matter. */
    public enum Nature {
        MOON,
        PLANET,
        /** Open or globular, or a group: seen as stars. */
        CLUSTER,
        /** Gas or dust around stars, whose light is included in its catalogue magnitude. */
        NEBULA,
        /** A galaxy, a planetary nebula, or anything else that appears as a glow. */
        GLOW,
        /** A star, or a position about which nothing else is known. */
        STAR
    }

    private static final String STAR_OR_PLACE = "star or place";
    private static final Set<String> CLUSTERS = Set.of(
            DeepSkyKind.OPEN_CLUSTER.words(), DeepSkyKind.GLOBULAR_CLUSTER.words(), DeepSkyKind.STAR_GROUP.words());
    private static final Set<String> NEBULAE = Set.of(
            DeepSkyKind.EMISSION_NEBULA.words(),
            DeepSkyKind.REFLECTION_NEBULA.words(),
            DeepSkyKind.BRIGHT_NEBULA.words(),
            DeepSkyKind.STAR_FORMING_REGION.words());
    private static final double ARCSEC2_IN_CIRCLE = Math.PI / 4;

    public String label() {
        return body.label();
    }

    public Nature nature() {
        if (body instanceof SolarSystemBody) {
            return body == SolarSystemBody.MOON ? Nature.MOON : Nature.PLANET;
        }
        if (kind.equals(STAR_OR_PLACE)) {
            return Nature.STAR;
        }
        if (CLUSTERS.contains(kind)) {
            return Nature.CLUSTER;
        }
        return NEBULAE.contains(kind) ? Nature.NEBULA : Nature.GLOW;
    }

    /** Magnitudes per square arcsecond, averaged over its ellipse, if size and magnitude are known. */
    public OptionalDouble surfaceBrightness() {
        double area = ARCSEC2_IN_CIRCLE * major.arcseconds() * minor.arcseconds();
        return magnitude.isPresent() && area > 0
                ? OptionalDouble.of(magnitude.getAsDouble() + 2.5 * Math.log10(area))
                : OptionalDouble.empty();
    }

    /** Whether it can be observed in twilight: the Moon and the naked-eye planets. */
    public boolean isBrightBody() {
        return body instanceof SolarSystemBody && body != SolarSystemBody.URANUS && body != SolarSystemBody.NEPTUNE;
    }

    /** The Moon, the planets, and the deep-sky list. The bundled lists do not include double stars. */
    public static List<Target> ofLists() {
        List<Target> targets = new ArrayList<>();
        for (SolarSystemBody body : SolarSystemBody.values()) {
            if (body != SolarSystemBody.SUN) {
                targets.add(ofBody(body, false));
            }
        }
        DeepSkyList.bundled().all().stream().filter(Target::isForLooking).forEach(object -> targets.add(of(object)));
        return targets;
    }

    /** A target named by the person, with the data from the lists. */
    public static Target wanted(SkyBody body) {
        if (body instanceof SolarSystemBody) {
            return ofBody(body, true);
        }
        return DeepSkyList.bundled()
                .find(body.label().replaceFirst(" \\(.*", ""))
                .filter(object -> object.label().equals(body.label()))
                .map(Target::of)
                .map(known -> new Target(
                        body, known.kind(), known.magnitude(), known.major(), known.minor(), known.renown(), true))
                .orElseGet(() -> ofBody(body, true));
    }

    private static Target ofBody(SkyBody body, boolean isWanted) {
        String kind =
                body == SolarSystemBody.MOON ? "the Moon" : body instanceof SolarSystemBody ? "planet" : STAR_OR_PLACE;
        return new Target(body, kind, OptionalDouble.empty(), Angle.ZERO, Angle.ZERO, Renown.FAMOUS, isWanted);
    }

    private static Target of(DeepSkyObject object) {
        double major = object.majorArcmin().orElse(0);
        return new Target(
                new FixedStar(object.label(), object.place()),
                object.kind().words(),
                object.magnitude(),
                Angle.ofArcminutes(major),
                Angle.ofArcminutes(object.minorArcmin().orElse(major)),
                renown(object),
                false);
    }

    /**
     * Dark clouds and faint nebulae have no magnitude of their own in catalogues: these entries are only used on
     * request.
     */
    private static boolean isForLooking(DeepSkyObject object) {
        return object.kind() != DeepSkyKind.DARK_NEBULA
                && object.designations().stream()
                        .anyMatch(d -> d.startsWith("M ") || d.startsWith("NGC ") || d.startsWith("IC "));
    }

    private static Renown renown(DeepSkyObject object) {
        if (object.designations().stream().anyMatch(designation -> designation.startsWith("M "))) {
            return Renown.FAMOUS;
        }
        return object.names().isEmpty() ? Renown.LISTED : Renown.NAMED;
    }
}
