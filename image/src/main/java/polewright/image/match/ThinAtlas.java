package polewright.image.match;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/**
 * Whether a frame was not matched because the atlas has too few stars for so narrow a field, and where it has enough.
 */
final class ThinAtlas {
    // If this many are expected, five are nearly always there, and five are enough to match a frame by its hints.
    private static final double ENOUGH = 6;
    private static final int RICH = 8;
    private static final double SCALE_KNOWN = 2;
    private static final double FAINTEST_MAGNITUDE = 16;
    private static final double FARTHEST_DEG = 60;

    private final StarAtlas atlas;
    private final double widthDeg;
    private final double heightDeg;

    private ThinAtlas(StarAtlas atlas, double widthDeg, double heightDeg) {
        this.atlas = atlas;
        this.widthDeg = widthDeg;
        this.heightDeg = heightDeg;
    }

    /**
     * The outcome in that case, if position and scale are nearly known.
     *
     * @param width of the frame, pixels, and its height
     */
    static Optional<Unmatched> of(StarAtlas atlas, int starsFound, int width, int height, MatchHint hint) {
        double most = hint.scale().most().degrees();
        double least = hint.scale().least().degrees();
        if (hint.near().isEmpty() || most > SCALE_KNOWN * least) {
            return Optional.empty();
        }
        double scale = Math.sqrt(most * least);
        return new ThinAtlas(atlas, width * scale, height * scale)
                .near(hint.near().get(), starsFound);
    }

    private Optional<Unmatched> near(SkyPatch patch, int starsFound) {
        Angle wide = new Angle(Math.max(patch.radius().radians(), fieldRadius().radians()));
        double expected = count(patch.direction(), wide)
                * (1 - Math.cos(fieldRadius().radians()))
                / (1 - Math.cos(wide.radians()));
        if (expected >= ENOUGH) {
            return Optional.empty();
        }
        String reason = "the atlas has about " + Math.max(1, Math.round(expected)) + " stars on a field of "
                + PlainNumber.of(tenths(widthDeg)) + " by " + PlainNumber.of(tenths(heightDeg))
                + " degrees within " + PlainNumber.of(patch.radius().degrees()) + " degrees of " + patch.words()
                + ", often too few to place a frame";
        String wider = "use a shorter focal length or a larger chip";
        String remedy = nearestRich(patch.direction())
                .map(place -> "point at "
                        + new SkyPatch(rightAscension(place), declination(place), fieldRadius()).words()
                        + ", " + Math.round(Math.toDegrees(Vector3D.angle(place, patch.direction())))
                        + " degrees from there, where the nearest field with " + RICH + " stars is, or " + wider)
                .orElse(wider);
        return Optional.of(new Unmatched(starsFound, reason, remedy));
    }

    /** Of a circle with the area of the frame. */
    private Angle fieldRadius() {
        return Angle.ofDegrees(Math.sqrt(widthDeg * heightDeg / Math.PI));
    }

    private int count(Vector3D middle, Angle radius) {
        int[] count = new int[1];
        atlas.visit(
                rightAscension(middle),
                declination(middle),
                radius,
                FAINTEST_MAGNITUDE,
                2000,
                (number, x, y, z, magnitude) -> count[0]++);
        return count[0];
    }

    /** Searches rings around a position, one field apart. */
    private Optional<Vector3D> nearestRich(Vector3D middle) {
        double step = Math.max(Math.toRadians(1), 2 * fieldRadius().radians());
        Vector3D across = middle.orthogonal();
        Vector3D other = Vector3D.crossProduct(middle, across);
        for (double ring = 0; ring <= Math.toRadians(FARTHEST_DEG); ring += step) {
            int places = Math.max(1, (int) (2 * Math.PI * Math.sin(ring) / step));
            for (int i = 0; i < places; i++) {
                double turn = 2 * Math.PI * i / places;
                Vector3D place = new Vector3D(
                        Math.cos(ring),
                        middle,
                        Math.sin(ring) * Math.cos(turn),
                        across,
                        Math.sin(ring) * Math.sin(turn),
                        other);
                if (count(place, fieldRadius()) >= RICH) {
                    return Optional.of(place);
                }
            }
        }
        return Optional.empty();
    }

    private static Angle rightAscension(Vector3D direction) {
        return new Angle(direction.getAlpha()).wrappedPositive();
    }

    private static Angle declination(Vector3D direction) {
        return new Angle(direction.getDelta());
    }

    private static double tenths(double degrees) {
        return Math.max(0.1, Math.rint(degrees * 10) / 10);
    }
}
