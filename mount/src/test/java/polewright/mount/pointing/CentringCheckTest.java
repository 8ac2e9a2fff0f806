package polewright.mount.pointing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * Positions of stars, J2000.0, within 0.4′ of the Bright Star Catalogue, 5th ed. (brettonw/YaleBrightStarCatalog,
 * bsc5-short.json, abffb3b7223a); they need only be consistent.
 */
class CentringCheckTest {
    private static final Site NORTH = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site SOUTH = Site.ofDegrees(-43.95, 170.40, 710);
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    private static final Weather WEATHER = Weather.standardAt(240);
    private static final Angle SIGMA = Angle.ofArcminutes(1);

    private static final FixedStar ALPHERATZ = star("Alpheratz", 0.140, 29.09);
    private static final FixedStar SCHEDAR = star("Schedar", 0.675, 56.54);
    private static final FixedStar MIRACH = star("Mirach", 1.162, 35.62);
    private static final FixedStar HAMAL = star("Hamal", 2.120, 23.46);
    private static final FixedStar ALGOL = star("Algol", 3.136, 40.96);
    private static final FixedStar MIRFAK = star("Mirfak", 3.405, 49.86);
    private static final FixedStar CAPELLA = star("Capella", 5.278, 46.00);
    private static final FixedStar VEGA = star("Vega", 18.616, 38.78);
    private static final FixedStar DENEB = star("Deneb", 20.690, 45.28);
    private static final FixedStar ENIF = star("Enif", 21.736, 9.875);
    private static final FixedStar ACHERNAR = star("Achernar", 1.629, -57.24);
    private static final FixedStar CANOPUS = star("Canopus", 6.399, -52.70);
    private static final FixedStar RIGEL = star("Rigel", 5.242, -8.20);
    private static final FixedStar FOMALHAUT = star("Fomalhaut", 22.961, -29.62);
    private static final List<FixedStar> NAMED = List.of(
            ALPHERATZ, SCHEDAR, MIRACH, HAMAL, ALGOL, MIRFAK, CAPELLA, VEGA, DENEB, ENIF, ACHERNAR, CANOPUS, RIGEL,
            FOMALHAUT);
    private static final List<FixedStar> FIVE = List.of(MIRACH, CAPELLA, VEGA, ENIF, DENEB);

    private enum Shows {
        RIGHT_ASCENSION,
        HOUR_ANGLE
    }

    @Test
    void starsThatAgree_raiseNoDoubt() {
        int doubted = 0;
        for (int seed = 0; seed < 100; seed++) {
            CheckedCentrings checked = check(NORTH, night(NORTH, FIVE, Shows.values()[seed % 2], seed));
            doubted += checked.doubts().isEmpty() ? 0 : 1;
        }
        // Each of the five stars is an outlier once in a thousand.
        assertThat(doubted).isLessThanOrEqualTo(3);
    }

    @Test
    void oneWrongStarOfFive_isFound_andItsTrueIdentityIsNamed() {
        int found = 0;
        for (int seed = 0; seed < 40; seed++) {
            List<CentredStar> stars = night(NORTH, FIVE, Shows.values()[seed % 2], seed);
            stars.set(0, stars.get(0).withStar(ALPHERATZ));
            CheckedCentrings checked = check(NORTH, stars);
            if (checked.doubts().size() == 1
                    && checked.doubts().get(0) instanceof CentringDoubt.OneWrong wrong
                    && wrong.index() == 0
                    && causes(wrong.mistakes()).contains("the star was Mirach")) {
                found++;
                assertThat(checked.believed()).hasSize(4).doesNotContain(stars.get(0));
            }
        }
        assertThat(found).isGreaterThanOrEqualTo(38);
    }

    @Test
    void oneWrongStarOfFive_isFound_inTheSouth() {
        List<FixedStar> five = List.of(ACHERNAR, CANOPUS, RIGEL, FOMALHAUT, HAMAL);
        Instant night = Instant.parse("2026-11-25T11:30:00Z");
        List<CentredStar> stars = night(SOUTH, night, five, Shows.RIGHT_ASCENSION, 4);
        stars.set(2, stars.get(2).withStar(ALPHERATZ));

        CentringDoubt.OneWrong wrong = oneWrong(check(SOUTH, stars), 2);

        assertThat(causes(wrong.mistakes())).contains("the star was Rigel");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void oneTimeAnHourOff_isNamed_ifTheMountReadsHourAngle(int index) {
        List<CentredStar> stars = night(NORTH, FIVE, Shows.HOUR_ANGLE, 7);
        stars.set(index, stars.get(index).withAt(stars.get(index).at().plus(Duration.ofHours(1))));

        CentringDoubt.OneWrong wrong = oneWrong(check(NORTH, stars), index);

        assertThat(wrong.mistakes().get(0).cause()).isEqualTo("the time was 1 hour earlier");
    }

    @Test
    void oneTimeSomeMinutesOff_isNamedToTheMinute() {
        List<CentredStar> stars = night(NORTH, FIVE, Shows.HOUR_ANGLE, 8);
        stars.set(1, stars.get(1).withAt(stars.get(1).at().minus(Duration.ofMinutes(20))));

        CentringDoubt.OneWrong wrong = oneWrong(check(NORTH, stars), 1);

        assertThat(causes(wrong.mistakes())).anyMatch(c -> c.matches("the time was (19|20|21) min later"));
    }

    @Test
    void mistypedDisplay_isNamed() {
        List<CentredStar> stars = night(NORTH, FIVE, Shows.RIGHT_ASCENSION, 9);
        MountDisplay.RightAscension read =
                (MountDisplay.RightAscension) stars.get(3).display();
        Angle ra = read.rightAscension();
        Angle dec = read.declination();

        assertThat(causeOf(stars, 3, new MountDisplay.RightAscension(ra.times(1 / 15.0), dec, false)))
                .isEqualTo("its right ascension was in hours, not degrees");
        assertThat(causeOf(stars, 3, new MountDisplay.RightAscension(ra, dec.negated(), false)))
                .isEqualTo("its declination was north, without a minus");
    }

    @Test
    void oneDisplayOfTheOtherEquinox_isNamed() {
        List<CentredStar> stars = night(
                NORTH, List.of(MIRACH, CAPELLA, VEGA, ENIF, DENEB, SCHEDAR, ALGOL, HAMAL), Shows.RIGHT_ASCENSION, 9);
        MountDisplay.RightAscension read =
                (MountDisplay.RightAscension) stars.get(4).display();

        assertThat(causeOf(stars, 4, new MountDisplay.RightAscension(read.rightAscension(), read.declination(), true)))
                .isEqualTo("the display was of date, not J2000");
    }

    @Test
    void wrongThroughPoleFlag_isNamed() {
        List<CentredStar> stars = night(NORTH, FIVE, Shows.HOUR_ANGLE, 10);
        stars.set(2, stars.get(2).withThroughPole(true));

        CheckedCentrings checked = check(NORTH, stars);

        assertThat(checked.doubts()).hasSize(1);
        assertThat(mistakes(checked.doubts().get(0))).contains("the tube had not gone through the pole");
    }

    /** The star and the reading shift together; only the axis offset, a few arcminutes, rotates. */
    @Test
    void oneTimeAFewMinutesOff_isUndetectable_ifTheMountReadsRightAscension() {
        List<CentredStar> stars = night(NORTH, FIVE, Shows.RIGHT_ASCENSION, TermValues.NONE, 14);
        stars.set(1, stars.get(1).withAt(stars.get(1).at().plus(Duration.ofMinutes(10))));

        assertThat(check(NORTH, stars).doubts()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3})
    void twoOrThreeStars_cannotShowWhichIsWrong(int count) {
        List<CentredStar> stars = night(NORTH, FIVE.subList(0, count), Shows.RIGHT_ASCENSION, 11);
        stars.set(0, stars.get(0).withStar(SCHEDAR));

        CheckedCentrings checked = check(NORTH, stars);

        assertThat(checked.doubts()).singleElement().isInstanceOfSatisfying(CentringDoubt.OneOf.class, one -> {
            assertThat(one.indexes()).hasSize(count);
            assertThat(causes(one.mistakes())).contains("the star was Mirach");
        });
        assertThat(checked.believed()).isEmpty();
    }

    @Test
    void latitudeAndLongitudeSwapped_isSeenByStarsBelowTheHorizon() {
        List<CentredStar> stars = night(NORTH, FIVE, Shows.RIGHT_ASCENSION, 12);
        Site swapped = new Site(NORTH.longitude(), NORTH.latitude(), NORTH.heightMetres());

        CheckedCentrings checked = check(swapped, stars);

        assertThat(checked.doubts())
                .anySatisfy(d -> assertThat(d)
                        .isInstanceOfSatisfying(
                                CentringDoubt.NotUp.class,
                                down -> assertThat(down.mistakes())
                                        .extracting(SharedMistake::cause)
                                        .contains("the site's latitude and longitude were swapped")));
    }

    /**
     * Every time off by an hour equals a zero off by an hour: it fits, and the result states that the two cannot be
     * distinguished.
     */
    @Test
    void everyTimeAnHourOff_cannotBeDistinguishedFromAMountNeverSet() {
        List<CentredStar> stars = new ArrayList<>();
        for (CentredStar star : night(NORTH, FIVE, Shows.HOUR_ANGLE, TermValues.NONE, 13)) {
            stars.add(star.withAt(star.at().plus(Duration.ofHours(1))));
        }

        CheckedCentrings checked = check(NORTH, stars);

        assertThat(checked.doubts()).containsExactly(new CentringDoubt.ZeroByHours(1));
        assertThat(checked.believed()).hasSize(5);
    }

    /** At 12° north and 40° east, entered swapped; by camera, to 5″, some stars low. */
    @Test
    void latitudeAndLongitudeSwapped_isNamed_ifRefractionRevealsIt() {
        Site truth = Site.ofDegrees(12, 40, 240);
        Site typed = Site.ofDegrees(40, 12, 240);
        Instant from = Instant.parse("2026-11-25T17:30:00Z");
        List<FixedStar> nine = List.of(MIRACH, ALPHERATZ, SCHEDAR, HAMAL, DENEB, ENIF, FOMALHAUT, MIRFAK, ALGOL);
        int named = 0;
        for (int seed = 0; seed < 12; seed++) {
            Random random = new Random(seed);
            TermValues terms = SimulatedRig.drawn(truth, 0.5, random).terms();
            List<CentredStar> stars =
                    night(truth, from, nine, Shows.values()[seed % 2], terms, random, Angle.ofArcseconds(5));
            List<CentringDoubt> doubts = check(typed, stars).doubts();
            assertThat(doubts).isNotEmpty();
            named += doubts.stream()
                            .filter(CentringDoubt.AllMistaken.class::isInstance)
                            .map(CentringDoubt.AllMistaken.class::cast)
                            .flatMap(d -> d.mistakes().stream())
                            .anyMatch(m -> m.cause().equals("the site's latitude and longitude were swapped"))
                    ? 1
                    : 0;
        }
        assertThat(named).isGreaterThanOrEqualTo(11);
    }

    private static String causeOf(List<CentredStar> good, int index, MountDisplay display) {
        List<CentredStar> stars = new ArrayList<>(good);
        stars.set(index, stars.get(index).withDisplay(display));
        return oneWrong(check(NORTH, stars), index).mistakes().get(0).cause();
    }

    private static CentringDoubt.OneWrong oneWrong(CheckedCentrings checked, int index) {
        assertThat(checked.doubts()).singleElement().isInstanceOf(CentringDoubt.OneWrong.class);
        CentringDoubt.OneWrong wrong = (CentringDoubt.OneWrong) checked.doubts().get(0);
        assertThat(wrong.index()).isEqualTo(index);
        return wrong;
    }

    private static List<String> mistakes(CentringDoubt doubt) {
        if (doubt instanceof CentringDoubt.OneWrong wrong) {
            return causes(wrong.mistakes());
        }
        return causes(((CentringDoubt.OneOf) doubt).mistakes());
    }

    private static List<String> causes(List<CentringMistake> mistakes) {
        return mistakes.stream().map(CentringMistake::cause).toList();
    }

    private static CheckedCentrings check(Site site, List<CentredStar> stars) {
        return CentringCheck.of(MountKind.FORK_ON_WEDGE, site, WEATHER, stars, NAMED);
    }

    private static FixedStar star(String name, double raHours, double decDeg) {
        return new FixedStar(name, CatalogueStar.fixed(Angle.ofHours(raHours), Angle.ofDegrees(decDeg)));
    }

    private static List<CentredStar> night(Site site, List<FixedStar> named, Shows shows, int seed) {
        return night(site, EVENING, named, shows, seed);
    }

    private static List<CentredStar> night(Site site, Instant from, List<FixedStar> named, Shows shows, int seed) {
        Random random = new Random(seed);
        TermValues terms = SimulatedRig.drawn(site, 0.5, random)
                .terms()
                .with(PointingTerm.HOUR_ANGLE_ZERO, Angle.ofDegrees(4 + random.nextDouble()));
        return night(site, from, named, shows, terms, random);
    }

    private static List<CentredStar> night(Site site, List<FixedStar> named, Shows shows, TermValues terms, int seed) {
        return night(site, EVENING, named, shows, terms, new Random(seed));
    }

    /** One star every five minutes. */
    private static List<CentredStar> night(
            Site site, Instant from, List<FixedStar> named, Shows shows, TermValues terms, Random random) {
        return night(site, from, named, shows, terms, random, SIGMA);
    }

    private static List<CentredStar> night(
            Site site, Instant from, List<FixedStar> named, Shows shows, TermValues terms, Random random, Angle sigma) {
        List<CentredStar> stars = new ArrayList<>();
        for (FixedStar star : named) {
            Instant at = from.plus(Duration.ofMinutes(5L * stars.size()));
            ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(at), WEATHER);
            CentredStar blank =
                    new CentredStar(at, star, new MountDisplay.HourAngle(Angle.ZERO, Angle.ZERO), false, sigma);
            HourAnglePlace seen = blank.reduced(site, WEATHER).seen();
            Angle west = sigma.times(random.nextGaussian() / seen.declination().cos());
            HourAnglePlace middle = new HourAnglePlace(
                    seen.hourAngle().plus(west), seen.declination().plus(sigma.times(random.nextGaussian())));
            MountReading reading = ForkModel.readingFor(site, terms, middle, false);
            stars.add(blank.withDisplay(
                    shows == Shows.HOUR_ANGLE
                            ? new MountDisplay.HourAngle(reading.hourAngle(), reading.declination())
                            : new MountDisplay.RightAscension(
                                    moment.siderealTime().minus(reading.hourAngle()), reading.declination(), false)));
        }
        return stars;
    }
}
