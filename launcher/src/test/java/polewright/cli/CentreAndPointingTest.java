package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.ForkModel;
import polewright.mount.pointing.MountDisplay;
import polewright.mount.pointing.MountReading;
import polewright.mount.pointing.PointingTerm;
import polewright.mount.pointing.TermValues;
import polewright.operations.CommandRun;
import polewright.operations.camera.CameraEvening;
import polewright.operations.input.BodyFinder;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** A fork with every mount error, its circle readings typed as an owner would. */
class CentreAndPointingTest {
    private static final List<String> NORTHERN =
            List.of("capella", "aldebaran", "rigel", "procyon", "pollux", "alpheratz", "mirfak", "dubhe");
    private static final List<String> SOUTHERN =
            List.of("canopus", "achernar", "sirius", "rigel", "acrux", "procyon", "fomalhaut", "avior");
    private static final double EAST_ARCMIN = 14;
    private static final double UP_ARCMIN = -9;
    private static final TermValues FORK = TermValues.NONE
            .with(PointingTerm.HOUR_ANGLE_ZERO, Angle.ofDegrees(12.5))
            .with(PointingTerm.DECLINATION_ZERO, Angle.ofArcminutes(-22))
            .with(PointingTerm.CONE, Angle.ofArcminutes(6))
            .with(PointingTerm.AXES_NOT_SQUARE, Angle.ofArcminutes(-2))
            .with(PointingTerm.AXIS_EAST, Angle.ofArcminutes(EAST_ARCMIN))
            .with(PointingTerm.AXIS_UP, Angle.ofArcminutes(UP_ARCMIN))
            .with(PointingTerm.FORK_SAG_FLAT, Angle.ofArcminutes(0.8))
            .with(PointingTerm.FORK_SAG_SIDE, Angle.ofArcminutes(-0.5))
            .with(PointingTerm.TUBE_SAG, Angle.ofArcminutes(0.7));

    @TempDir
    private Path folder;

    private CommandRun begun(Site site, String now) {
        CommandRun person = new CommandRun(folder, now);
        person.good(
                "begin",
                "--site=" + site.latitude().degrees() + "," + site.longitude().degrees() + "," + site.heightMetres());
        return person;
    }

    /** Hour angle and declination on the fork's circles with the star centred, ±20″. */
    private static String reading(Site site, String name, Instant at, Random random) {
        SkyBody star = BodyFinder.named(name);
        CentredStar any = new CentredStar(
                at, star, new MountDisplay.HourAngle(Angle.ZERO, Angle.ZERO), false, CentredStar.USUAL_SIGMA);
        HourAnglePlace seen =
                any.reduced(site, Weather.standardAt(site.heightMetres())).seen();
        double noise = Angle.ofArcseconds(20).radians();
        HourAnglePlace off = new HourAnglePlace(
                new Angle(seen.hourAngle().radians()
                        + random.nextGaussian() * noise / seen.declination().cos()),
                new Angle(seen.declination().radians() + random.nextGaussian() * noise));
        MountReading reading = ForkModel.readingFor(site, FORK, off, false);
        return String.format(
                Locale.ROOT,
                "%.4f,%.4f",
                reading.hourAngle().degrees(),
                reading.declination().degrees());
    }

    private static void centreAll(CommandRun person, Site site, String now, List<String> stars) {
        Random random = new Random(5);
        for (String star : stars) {
            person.good(
                    "centre",
                    star,
                    "--hour-angle",
                    "--reads=" + reading(site, star, Instant.parse(now), random),
                    "--sigma",
                    "0.33");
        }
    }

    @ParameterizedTest
    @CsvSource({"54.60, -2.90, 240, 2026-01-15T20:00:00Z", "-43.95, 170.40, 710, 2026-01-15T10:30:00Z"})
    void axis_isFoundWithinTheStatedUncertainty_andCountsAsASighting(
            double latitude, double longitude, double height, String now) throws IOException {
        Site site = Site.ofDegrees(latitude, longitude, height);
        CommandRun person = begun(site, now);
        centreAll(person, site, now, latitude > 0 ? NORTHERN : SOUTHERN);
        JsonNode pointing = json(person, "pointing", "--json");
        assertThat(pointing.get("doubts")).isEmpty();
        JsonNode axis = pointing.get("axis");
        double east = (axis.get("east_arcmin").asDouble() - EAST_ARCMIN)
                / axis.get("sigma_east_arcmin").asDouble();
        double up = (axis.get("up_arcmin").asDouble() - UP_ARCMIN)
                / axis.get("sigma_up_arcmin").asDouble();
        assertThat(Math.hypot(east, up)).isLessThan(3);
        String fix = person.good("fix").out();
        assertThat(fix).startsWith("Axis: ");
        JsonNode state = json(person, "fix", "--json");
        assertThat(state.toString()).contains("centred stars");
    }

    private static JsonNode json(CommandRun person, String... words) throws IOException {
        return new ObjectMapper().readTree(person.good(words).out());
    }

    @Test
    void turningAScrew_startsANewSet() throws IOException {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        String now = "2026-01-15T20:00:00Z";
        CommandRun person = begun(site, now);
        centreAll(person, site, now, NORTHERN.subList(0, 4));
        assertThat(json(person, "pointing", "--json").get("centred").asInt()).isEqualTo(4);
        person.good("turn", "--altitude", "1/4");
        assertThat(json(person, "pointing", "--json").get("centred").asInt()).isZero();
        assertThat(person.good("pointing").lines().get(0)).startsWith("No star centred since the axis last moved. ");
        person.good("undo");
        assertThat(json(person, "pointing", "--json").get("centred").asInt()).isEqualTo(4);
    }

    @Test
    void misidentifiedStar_isNamedAndExcluded() throws IOException {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        String now = "2026-01-15T20:00:00Z";
        CommandRun person = begun(site, now);
        centreAll(person, site, now, NORTHERN);
        // Castor was centred, but Bellatrix was entered.
        String castor = reading(site, "castor", Instant.parse(now), new Random(7));
        CommandRun.Outcome outcome =
                person.good("centre", "bellatrix", "--hour-angle", "--reads=" + castor, "--sigma", "0.33");
        assertThat(outcome.out().replace("\n", " "))
                .contains("DOUBT  #10 Bellatrix contradicts the others and is not used. It would fit if ")
                .contains("Castor");
        assertThat(json(person, "pointing", "--json").get("believed").asInt()).isEqualTo(8);
    }

    @Test
    void output_fitsAScreen_mostImportantFirst() {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        String now = "2026-01-15T20:00:00Z";
        CommandRun person = begun(site, now);
        centreAll(person, site, now, NORTHERN);
        CommandRun.Outcome outcome = person.good("pointing");
        assertThat(outcome.lines()).allMatch(line -> line.length() <= 80);
        assertThat(outcome.lines().get(0)).startsWith("Go-tos land within ");
        assertThat(outcome.out())
                .contains("NEXT  Centre ")
                .contains("Not separable with these stars: ")
                .containsPattern("It\\s+counts\\s+as\\s+a\\s+sighting\\.")
                .contains("  #2 Capella: ");
        assertThat(person.good("log").out()).contains("centred Capella");
    }

    @Test
    void table_isReadWholeOrNotAtAll() throws IOException {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        String now = "2026-01-15T20:00:00Z";
        CommandRun person = begun(site, now);
        StringBuilder table = new StringBuilder("time,star,ha,dec,sigma_arcmin\n# by eye\n");
        for (String star : NORTHERN) {
            table.append(now)
                    .append(',')
                    .append(star)
                    .append(',')
                    .append(reading(site, star, Instant.parse(now), new Random(3)))
                    .append(",0.5\n");
        }
        Path bad = Files.writeString(folder.resolve("bad.csv"), table + now + ",vegga,10,38,1\n");
        CommandRun.Outcome refused = person.run("centre", "--csv", bad.toString());
        assertThat(refused.status()).isEqualTo(1);
        assertThat(refused.complaint()).contains("bad.csv: line 11: nothing in the sky is called 'vegga'");
        assertThat(person.events()).isEqualTo(1);
        Path good = Files.writeString(folder.resolve("good.csv"), table);
        assertThat(person.good("centre", "--csv", good.toString()).out())
                .startsWith("Logged #2 to #9: 8 centrings from " + good + ".");
        assertThat(person.events()).isEqualTo(9);
    }

    @Test
    void rightAscension_canBeInHoursAndMinutes() throws IOException {
        CommandRun person = begun(Site.ofDegrees(54.6, -2.9, 240), "2026-01-15T20:00:00Z");
        person.good("centre", "capella", "--reads", "5h18m45s,+46d00m59s");
        person.good("centre", "capella", "--reads", "79.6875,46.0164");
        JsonNode left = json(person, "pointing", "--json").get("left");
        assertThat(left.get(0).get("left_out_arcmin").asDouble()).isLessThan(0.5);
    }

    /** The circles of the camera evening's fork show the coordinates it was sent to; only its axis is off. */
    @Test
    void frames_canReplaceCentredStars() throws IOException {
        CameraEvening evening = CameraEvening.atLarkfell();
        CommandRun person = begun(CameraEvening.LARKFELL, "2026-11-25T21:00:00Z");
        evening.stopDrive();
        double[][] aims = {{-40, 20}, {35, 45}, {10, 5}, {-10, 60}};
        for (int i = 0; i < aims.length; i++) {
            evening.pointAt(aims[i][0], aims[i][1]);
            Path frame = evening.take(folder.resolve("aim" + i + ".fits"));
            String reads = String.format(Locale.ROOT, "%.4f,%.4f", aims[i][0], aims[i][1]);
            assertThat(person.good(
                                    "centre",
                                    "--frame",
                                    frame.toString(),
                                    "--scale",
                                    "20.6",
                                    "--hour-angle",
                                    "--reads=" + reads)
                            .out())
                    .contains("Logged #" + (i + 2) + ": centred the middle of aim" + i + ".fits.");
            evening.waitSeconds(60);
        }
        JsonNode axis = json(person, "pointing", "--json").get("axis");
        double east =
                axis.get("east_arcmin").asDouble() - evening.trueOffset().east().arcminutes();
        double up = axis.get("up_arcmin").asDouble() - evening.trueOffset().up().arcminutes();
        assertThat(Math.hypot(
                        east / axis.get("sigma_east_arcmin").asDouble(),
                        up / axis.get("sigma_up_arcmin").asDouble()))
                .isLessThan(3);
    }

    @Test
    void map_isDrawn() throws IOException {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        String now = "2026-01-15T20:00:00Z";
        CommandRun person = begun(site, now);
        assertThat(person.run("pointing", "--picture", folder.resolve("map.svg").toString())
                        .complaint())
                .isEqualTo("polewright pointing: there is nothing to draw yet: centre a star first with polewright"
                        + " centre.");
        centreAll(person, site, now, NORTHERN);
        Path map = folder.resolve("map.svg");
        person.good("pointing", "--picture", map.toString(), "--dark");
        assertThat(Files.readString(map).split("class=\"left\"", -1)).hasSize(9);
    }

    @Test
    void nonsense_isRefused() {
        CommandRun person = begun(Site.ofDegrees(54.6, -2.9, 240), "2026-01-15T20:00:00Z");
        assertThat(person.run("centre", "sun", "--reads", "10,10").complaint())
                .isEqualTo(
                        "polewright centre: the Sun must never be centred. Keep the tube capped by day, or use a proper"
                                + " filter and a planet.");
        assertThat(person.run("centre", "vega", "--reads", "10").complaint())
                .contains("'10' is not a mount reading. Write both figures, such as 5h17m38s,+46d12m36s, or"
                        + " 79.41,46.21 in degrees.");
        assertThat(person.run("centre", "vega", "--reads", "10,95").complaint())
                .contains("a declination of 95 degrees is beyond 90");
        assertThat(person.run("centre", "vega").complaint())
                .contains("the star and the mount's reading are both needed");
    }
}
