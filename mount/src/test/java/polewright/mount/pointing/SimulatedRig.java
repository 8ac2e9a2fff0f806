package polewright.mount.pointing;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** A mount with errors known only to the test, and centrings made with it. */
record SimulatedRig(Site site, TermValues terms, Random random) {
    private static final double LOWEST_DEG = 20;

    /** Each term drawn from its usual size times a factor. */
    static SimulatedRig drawn(Site site, double factor, Random random) {
        TermValues terms = TermValues.NONE;
        for (PointingTerm term : PointingTerm.values()) {
            terms = terms.with(term, term.usualSize().times(factor * random.nextGaussian()));
        }
        return new SimulatedRig(site, terms, random);
    }

    /** One in either hemisphere. */
    static SimulatedRig anywhere(double factor, Random random) {
        double lat = (random.nextBoolean() ? 1 : -1) * (25 + 35 * random.nextDouble());
        return drawn(Site.ofDegrees(lat, 0, 0), factor, random);
    }

    List<Centring> centrings(int count, Angle sigma) {
        List<Centring> centrings = new ArrayList<>();
        while (centrings.size() < count) {
            centrings.add(centring(place(), sigma));
        }
        return centrings;
    }

    Centring centring(HourAnglePlace middle, Angle sigma) {
        MountReading reading = ForkModel.readingFor(site, terms, middle, false);
        Angle west = sigma.times(random.nextGaussian());
        Angle declination = middle.declination().plus(sigma.times(random.nextGaussian()));
        HourAnglePlace seen = new HourAnglePlace(
                middle.hourAngle().plus(west.times(1 / middle.declination().cos())), declination);
        return new Centring("star", seen, reading, sigma);
    }

    /** Anywhere above 20°, uniformly on the sky. */
    HourAnglePlace place() {
        double low = Math.sin(Math.toRadians(LOWEST_DEG));
        double up = low + (1 - low) * random.nextDouble();
        double azimuth = 2 * Math.PI * random.nextDouble();
        double level = Math.sqrt(1 - up * up);
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        double north = level * Math.cos(azimuth);
        double dec = Math.asin(cosLat * north + sinLat * up);
        double hourAngle = Math.atan2(-level * Math.sin(azimuth), -sinLat * north + cosLat * up);
        return new HourAnglePlace(new Angle(hourAngle), new Angle(dec));
    }

    /** The actual error of a go-to by that model. */
    Angle missed(PointingModel model, HourAnglePlace wanted) {
        return SkyOffset.between(wanted, ForkModel.looksAt(site, terms, model.readingFor(wanted)))
                .distance();
    }
}
