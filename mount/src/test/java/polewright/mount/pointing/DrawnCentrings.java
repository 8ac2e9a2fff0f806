package polewright.mount.pointing;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Nights of random centrings from a seed: error-free ones, and ones with each of the usual mistakes. */
final class DrawnCentrings {
    static final Weather WEATHER = Weather.standardAt(240);

    /** Invented stars all over the sky, to centre and to confuse with each other. */
    static final List<FixedStar> STARS = stars(new Random(1), 60);

    private static final double LOWEST_DEG = 15;
    private static final double MOST_SHOWN_DEG = 85;

    private final Site site;
    private final Random random;
    private final boolean readsHourAngle;
    private final Angle sigma;
    private final TermValues terms;
    private Instant at;

    DrawnCentrings(Site site, Random random) {
        this.site = site;
        this.random = random;
        readsHourAngle = random.nextBoolean();
        sigma = Angle.ofArcminutes(random.nextBoolean() ? 1 : 0.2);
        TermValues drawn = SimulatedRig.drawn(site, 0.5, random).terms();
        terms = random.nextBoolean()
                ? drawn.with(PointingTerm.HOUR_ANGLE_ZERO, Angle.ofDegrees(360 * random.nextDouble()))
                : drawn;
        at = Instant.parse("2026-03-01T20:00:00Z").plusSeconds(random.nextInt(200 * 86_400));
    }

    private static List<FixedStar> stars(Random random, int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> new FixedStar(
                        "star " + i,
                        CatalogueStar.fixed(
                                Angle.ofHours(24 * random.nextDouble()),
                                new Angle(Math.asin(2 * random.nextDouble() - 1)))))
                .toList();
    }

    List<CentredStar> honest(int count) {
        List<CentredStar> stars = new ArrayList<>();
        while (stars.size() < count) {
            stars.add(next());
        }
        return stars;
    }

    /** The first {@code wrong} of them are wrong. */
    List<CentredStar> mistaken(int count, int wrong) {
        List<CentredStar> stars = honest(count);
        for (int i = 0; i < wrong; i++) {
            stars.set(i, mistaken(stars.get(i)));
        }
        return stars;
    }

    List<CentredStar> allAnHourLate(int count) {
        return honest(count).stream()
                .map(star -> star.movedBy(Duration.ofHours(1)))
                .toList();
    }

    /** The mount's readings are unrelated to the stars. */
    List<CentredStar> contradicting(int count) {
        return honest(count).stream()
                .map(star -> star.withDisplay(display(
                        star.at(),
                        new MountReading(
                                Angle.ofDegrees(360 * random.nextDouble()),
                                Angle.ofDegrees(90 - 180 * random.nextDouble())))))
                .toList();
    }

    private CentredStar next() {
        while (true) {
            FixedStar star = STARS.get(random.nextInt(STARS.size()));
            CentredStar blank =
                    new CentredStar(at, star, new MountDisplay.HourAngle(Angle.ZERO, Angle.ZERO), false, sigma);
            ObservingMoment moment = moment(at);
            HourAnglePlace seen = blank.reduced(moment).seen();
            if (moment.airless(seen).altitude().degrees() > LOWEST_DEG) {
                boolean isThroughPole = random.nextInt(6) == 0;
                Angle west =
                        sigma.times(random.nextGaussian() / seen.declination().cos());
                HourAnglePlace middle = new HourAnglePlace(
                        seen.hourAngle().plus(west), seen.declination().plus(sigma.times(random.nextGaussian())));
                MountReading reading = ForkModel.readingFor(site, terms, middle, isThroughPole);
                MountReading shown = isThroughPole ? reading.throughPole() : reading;
                // No mount displays more; commands and pages refuse it.
                if (Math.abs(shown.declination().degrees()) < MOST_SHOWN_DEG) {
                    CentredStar centred = blank.withThroughPole(isThroughPole).withDisplay(display(at, shown));
                    at = at.plusSeconds(120 + random.nextInt(300));
                    return centred;
                }
            }
        }
    }

    private CentredStar mistaken(CentredStar star) {
        Angle dec = star.display().declination();
        return switch (random.nextInt(6)) {
            case 0 -> star.withStar(STARS.get(random.nextInt(STARS.size())));
            case 1 -> star.movedBy(Duration.ofHours(random.nextBoolean() ? 1 : -1));
            case 2 -> star.movedBy(Duration.ofMinutes(random.nextInt(200)));
            case 3 -> star.withThroughPole(!star.isThroughPole());
            case 4 ->
                star.withDisplay(withDeclination(star.display(), dec.plus(Angle.ofDegrees(random.nextGaussian()))));
            default -> star.withDisplay(withDeclination(star.display(), dec.negated()));
        };
    }

    private static MountDisplay withDeclination(MountDisplay display, Angle declination) {
        if (display instanceof MountDisplay.RightAscension read) {
            return new MountDisplay.RightAscension(read.rightAscension(), declination, read.isJ2000());
        }
        return new MountDisplay.HourAngle(((MountDisplay.HourAngle) display).hourAngle(), declination);
    }

    private MountDisplay display(Instant when, MountReading reading) {
        return readsHourAngle
                ? new MountDisplay.HourAngle(reading.hourAngle(), reading.declination())
                : new MountDisplay.RightAscension(
                        moment(when).siderealTime().minus(reading.hourAngle()), reading.declination(), false);
    }

    private ObservingMoment moment(Instant when) {
        return ObservingMoment.of(site, SkyTime.of(when), WEATHER);
    }
}
