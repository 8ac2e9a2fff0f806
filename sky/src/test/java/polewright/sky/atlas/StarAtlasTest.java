package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class StarAtlasTest {
    private final StarAtlas atlas = StarAtlas.bundled();

    @Test
    void containsAsManyStarsAsItsBuilderCounted() {
        assertThat(atlas.size()).isEqualTo(1_872_518);
        assertThat(atlas.sizeWithMotion()).isEqualTo(1_076);
    }

    @Test
    void companionsShareTheProperMotionOfTheirPrimaries() {
        // Alpha Centauri A and B, 14″ apart in 2000 (common practice), move 3.7″ a year; 61 Cygni 5.3″ a year.
        assertMoveTogether(219.9, -60.835, 2, 1.5);
        assertMoveTogether(316.73, 38.745, 2, 6.2);
    }

    private void assertMoveTogether(double raDeg, double decDeg, int stars, double faintest) {
        Angle ra = Angle.ofDegrees(raDeg);
        Angle dec = Angle.ofDegrees(decDeg);
        StarField then = atlas.starsWithin(ra, dec, Angle.ofArcminutes(4), faintest, 2000.0);
        StarField now = atlas.starsWithin(ra, dec, Angle.ofArcminutes(4), faintest, 2026.0);
        assertThat(then.size()).isEqualTo(stars);
        assertThat(now.size()).isEqualTo(stars);
        double apartThen = then.direction(0).distance(then.direction(1));
        double apartNow = now.direction(0).distance(now.direction(1));
        assertThat(Angle.ofRadians(apartNow - apartThen).abs().arcseconds()).isLessThan(0.5);
        assertThat(Angle.ofRadians(then.direction(0).distance(now.direction(0))).arcseconds())
                .isGreaterThan(90);
    }

    @Test
    void emptyRowsOfTheSourceAreNotStars() {
        assertThat(atlas.starsWithin(Angle.ZERO, Angle.ZERO, Angle.ofArcseconds(5), 20)
                        .size())
                .isZero();
    }

    @Test
    void fieldIsBrightestFirst() {
        StarField field = atlas.starsWithin(Angle.ofHours(5.6), Angle.ofDegrees(-5), Angle.ofDegrees(4), 20);
        assertThat(field.size()).isGreaterThan(1500);
        for (int i = 1; i < field.size(); i++) {
            assertThat(field.magnitude(i)).isGreaterThanOrEqualTo(field.magnitude(i - 1));
        }
    }

    @Test
    void magnitudeLimitTruncatesTheSameList() {
        Angle ra = Angle.ofHours(20);
        Angle dec = Angle.ofDegrees(40);
        Angle radius = Angle.ofDegrees(3);
        StarField deep = atlas.starsWithin(ra, dec, radius, 20);
        StarField shallow = atlas.starsWithin(ra, dec, radius, 9.5);
        assertThat(shallow.size()).isBetween(20, deep.size() - 1);
        for (int i = 0; i < shallow.size(); i++) {
            assertThat(shallow.number(i)).isEqualTo(deep.number(i));
        }
        assertThat(shallow.magnitude(shallow.size() - 1)).isLessThanOrEqualTo(9.5);
        assertThat(deep.magnitude(shallow.size())).isGreaterThan(9.5);
    }

    @Test
    void limitBrighterThanSirius_findsNothing() {
        assertThat(atlas.starsWithin(Angle.ZERO, Angle.ZERO, Angle.HALF_TURN, -1.5)
                        .size())
                .isZero();
    }

    @Test
    void wholeSkyToTheNakedEyeLimit_hasAboutAsManyStarsAsTheYaleCatalogue() {
        // The Yale Bright Star Catalogue has 9,110 entries to about V 6.5 (common practice); VT is up to 0.15 fainter.
        StarField sky = atlas.starsWithin(Angle.ZERO, Angle.ZERO, Angle.HALF_TURN, 6.5);
        assertThat(sky.size()).isBetween(7_500, 9_600);
    }

    @Test
    void everyStarOfASearchHasItsNumber() {
        StarField field = atlas.starsWithin(Angle.ofDegrees(359.9), Angle.ofDegrees(89.5), Angle.ofDegrees(2), 20);
        for (int i = 0; i < field.size(); i++) {
            AtlasStar star = atlas.star(field.number(i));
            assertThat(field.star(i)).isEqualTo(star);
            assertThat(Separation.arcsec(
                            star.place().rightAscension(),
                            star.place().declination(),
                            field.rightAscension(i),
                            field.declination(i)))
                    .isLessThan(1e-6);
            assertThat(field.magnitude(i)).isCloseTo(star.magnitude(), within(1e-6));
        }
    }

    @Test
    void firstAndLastNumbersHaveStars_numbersBeyondDoNot() {
        assertThat(atlas.star(0).magnitude()).isEqualTo(-1.46);
        assertThat(atlas.star(atlas.size() - 1).place().declination().degrees()).isGreaterThan(89);
        assertThatThrownBy(() -> atlas.star(atlas.size())).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void noBrightStarIsDuplicated() {
        // Pairs of stars to magnitude 6 within 10″, each a known double of the Bright Star Catalogue, 5th ed.
        // (brettonw/YaleBrightStarCatalog, bsc5-short.json, abffb3b7223a), by the position of the brighter star.
        // Duplicates of one star would have nearly the same magnitude and be much closer than these.
        StarField field = atlas.starsWithin(Angle.ZERO, Angle.ZERO, Angle.HALF_TURN, 6.0);
        Set<String> pairs = new HashSet<>();
        for (int i = 0; i < field.size(); i++) {
            for (int j = i + 1; j < field.size(); j++) {
                double dz = field.z(i) - field.z(j);
                if (Math.abs(dz) < 5e-5
                        && Angle.ofRadians(field.direction(i).distance(field.direction(j)))
                                        .arcseconds()
                                < 10) {
                    double apart = Angle.ofRadians(field.direction(i).distance(field.direction(j)))
                            .arcseconds();
                    assertThat(apart).isGreaterThan(2.5);
                    pairs.add(Math.round(field.rightAscension(i).degrees()) + " "
                            + Math.round(field.declination(i).degrees()));
                }
            }
        }
        assertThat(pairs)
                .containsExactlyInAnyOrder(
                        "114 32", // Castor
                        "264 -43", // theta Scorpii
                        "31 42", // Almach, gamma1 and gamma2 Andromedae
                        "147 -65", // upsilon Carinae
                        "259 14", // Rasalgethi
                        "84 10", // Meissa
                        "97 -7", // beta Monocerotis, three stars
                        "234 11", // delta Serpentis
                        "208 -33", // k (3) Centauri
                        "235 37", // zeta Coronae Borealis
                        "123 18", // zeta Cancri
                        "220 16", // pi Bootis
                        "270 22", // 95 Herculis
                        "246 -23", // rho Ophiuchi
                        "173 -29", // 17 Crateris
                        "114 -23", // n Puppis
                        "190 -13"); // VV Corvi
    }

    @Test
    void properMotionMovesArcturus_atItsCatalogueRate() {
        // 2.28″ a year (van Leeuwen 2007): 60″ by mid-2026.
        Angle ra = Angle.ofDegrees(213.9153);
        Angle dec = Angle.ofDegrees(19.1824);
        StarField then = atlas.starsWithin(ra, dec, Angle.ofArcminutes(3), 2, 2000.0);
        StarField now = atlas.starsWithin(ra, dec, Angle.ofArcminutes(3), 2, 2026.5);
        assertThat(then.size()).isEqualTo(1);
        assertThat(now.size()).isEqualTo(1);
        assertThat(Separation.arcsec(
                        then.rightAscension(0), then.declination(0), now.rightAscension(0), now.declination(0)))
                .isCloseTo(26.5 * Math.hypot(1.09339, 2.00006), within(0.01));
        assertThat(now.declination(0)).isLessThan(then.declination(0));
    }

    @Test
    void radiusBeyondTheSkyIsRefused() {
        assertThatThrownBy(() -> atlas.starsWithin(Angle.ZERO, Angle.ZERO, Angle.ofDegrees(200), 6))
                .isInstanceOf(InputRefused.class)
                .hasMessage("search radius 200 is outside 0 to 180 degrees. Give the radius of the field in degrees.");
        assertThatThrownBy(() -> atlas.starsWithin(Angle.ZERO, Angle.ofDegrees(95), Angle.ofDegrees(1), 6))
                .isInstanceOf(InputRefused.class)
                .hasMessage("declination 95 is beyond 90 degrees. Give right ascension first, then declination, in"
                        + " degrees.");
    }

    @Test
    void fileThatIsNotAnAtlasIsRefused() {
        byte[] other = "SIMPLE  = T and more".getBytes(StandardCharsets.US_ASCII);
        assertThatThrownBy(() -> StarAtlas.read(new ByteArrayInputStream(other)))
                .isInstanceOf(IOException.class)
                .hasMessage("not a star atlas: it does not start with PWSTARS1");
    }
}
