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
 * Something that could be looked at.
 *
 * @param body where it is
 * @param kind in plain words, e.g. {@code open cluster}
 * @param magnitude of the whole; empty when not known
 * @param major longest extent; zero when not known, or a point
 * @param minor extent across
 * @param renown how well known it is
 * @param isWanted the person asked for it
 */
public record Target(
        SkyBody body,
        String kind,
        OptionalDouble magnitude,
        Angle major,
        Angle minor,
        Renown renown,
        boolean isWanted) {
    /** How well known something is among observers: what most of them look at is what shows something. */
    public enum Renown {
        /** Of Messier's list, the Moon, a planet. */
        FAMOUS,
        /** It has a common name. */
        NAMED,
        /** The rest of the two great catalogues, NGC and IC. */
        LISTED
    }

    /** What decides how much moonlight and the work matter to it. */
    public enum Nature {
        MOON,
        PLANET,
        /** Open or globular, or a group: it is seen as stars. */
        CLUSTER,
        /** Gas or dust among stars, whose light catalogues add to its magnitude. */
        NEBULA,
        /** A galaxy, a planetary nebula, or anything else that is a glow. */
        GLOW,
        /** A star, or a place of which nothing more is known. */
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

    /** Magnitudes a square arcsecond over its ellipse, if size and magnitude are known. */
    public OptionalDouble surfaceBrightness() {
        double area = ARCSEC2_IN_CIRCLE * major.arcseconds() * minor.arcseconds();
        return magnitude.isPresent() && area > 0
                ? OptionalDouble.of(magnitude.getAsDouble() + 2.5 * Math.log10(area))
                : OptionalDouble.empty();
    }

    /** Whether twilight is dark enough for it: the Moon and the planets that the eye sees. */
    public boolean isBrightBody() {
        return body instanceof SolarSystemBody && body != SolarSystemBody.URANUS && body != SolarSystemBody.NEPTUNE;
    }

    /** The Moon, the planets, and the deep-sky list. The bundled lists have no double stars. */
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

    /** What the person named, with what the lists know of it. */
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

    /** Catalogues of dark clouds and faint nebulae have no magnitudes of their own: their entries can only be asked for. */
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
