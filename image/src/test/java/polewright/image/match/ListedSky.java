package polewright.image.match;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.star.FoundStar;
import polewright.image.star.StarList;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;

/**
 * A simulated camera that lists atlas stars at their positions, with errors, gaps and spurious detections, without
 * pixels.
 */
record ListedSky(
        int width,
        int height,
        Vector3D centre,
        double rollRad,
        double scaleRad,
        boolean mirrored,
        double cornerDistortion,
        int brightest,
        double centreSigma,
        double magnitudeSigma,
        double lostShare,
        int strays) {
    static final double JULIAN_YEAR = 2026.9;

    static ListedSky of(Random dice, double fieldWidthDeg, boolean mirrored) {
        Vector3D centre = new Vector3D(dice.nextDouble() * 2 * Math.PI, Math.asin(2 * dice.nextDouble() - 1));
        double scale = Math.tan(Math.toRadians(fieldWidthDeg / 2)) / 800;
        return new ListedSky(
                1600, 1200, centre, dice.nextDouble() * 2 * Math.PI, scale, mirrored, 0, 120, 0.15, 0.15, 0.05, 3);
    }

    ListedSky withDistortion(double corner) {
        return new ListedSky(
                width,
                height,
                centre,
                rollRad,
                scaleRad,
                mirrored,
                corner,
                brightest,
                centreSigma,
                magnitudeSigma,
                lostShare,
                strays);
    }

    ListedSky with(int brightestStars, double lost, int strayCount) {
        return new ListedSky(
                width,
                height,
                centre,
                rollRad,
                scaleRad,
                mirrored,
                cornerDistortion,
                brightestStars,
                centreSigma,
                magnitudeSigma,
                lost,
                strayCount);
    }

    ListedSky lookingAt(Vector3D direction) {
        return new ListedSky(
                width,
                height,
                direction,
                rollRad,
                scaleRad,
                mirrored,
                cornerDistortion,
                brightest,
                centreSigma,
                magnitudeSigma,
                lostShare,
                strays);
    }

    Vector3D down() {
        Vector3D east = Vector3D.crossProduct(Vector3D.PLUS_K, centre).normalize();
        Vector3D north = Vector3D.crossProduct(centre, east);
        return new Vector3D(-Math.cos(rollRad), north, -Math.sin(rollRad), east);
    }

    StarList list(Random dice) {
        double h = Math.hypot(width, height) / 2;
        double radius = Math.atan(h * scaleRad * 1.1);
        StarField stars = StarAtlas.bundled()
                .starsWithin(
                        new Angle(centre.getAlpha()).wrappedPositive(),
                        new Angle(centre.getDelta()),
                        new Angle(Math.min(1.4, radius)),
                        16,
                        JULIAN_YEAR);
        Vector3D down = down();
        Vector3D right = Vector3D.crossProduct(down, centre);
        List<FoundStar> found = new ArrayList<>();
        for (int i = 0; i < stars.size() && found.size() < brightest; i++) {
            Vector3D s = stars.direction(i);
            double z = s.dotProduct(centre);
            if (z < 0.1) {
                continue;
            }
            double u = s.dotProduct(right) / z / scaleRad;
            double v = s.dotProduct(down) / z / scaleRad;
            double bent = 1 + cornerDistortion * (u * u + v * v) / (h * h);
            double x = (mirrored ? -u : u) * bent + (width - 1) / 2.0 + centreSigma * dice.nextGaussian();
            double y = v * bent + (height - 1) / 2.0 + centreSigma * dice.nextGaussian();
            if (x < 0 || y < 0 || x > width - 1 || y > height - 1 || dice.nextDouble() < lostShare) {
                continue;
            }
            found.add(star(x, y, stars.magnitude(i) + magnitudeSigma * dice.nextGaussian()));
        }
        if (found.isEmpty()) {
            return new StarList(width, height, found);
        }
        double bright = found.get(0).flux();
        double faint = found.get(found.size() - 1).flux();
        for (int i = 0; i < strays; i++) {
            found.add(star(
                    dice.nextDouble() * width,
                    dice.nextDouble() * height,
                    -2.5 * Math.log10(faint + dice.nextDouble() * Math.max(0, Math.min(bright, 5 * faint) - faint))));
        }
        found.sort(Comparator.comparingDouble(FoundStar::flux).reversed());
        return new StarList(width, height, found);
    }

    private FoundStar star(double x, double y, double magnitude) {
        return new FoundStar(x, y, centreSigma, centreSigma, Math.pow(10, -0.4 * magnitude), 20, 3, 1, 0, false);
    }
}
