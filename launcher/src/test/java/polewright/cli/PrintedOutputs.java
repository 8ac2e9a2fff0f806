package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import polewright.launcher.Main;
import polewright.operations.CommandRun;
import polewright.operations.Workbench;
import polewright.operations.camera.CameraEvening;
import polewright.operations.device.PairedDevices;
import polewright.operations.watch.SettableClock;
import polewright.report.json.PublishedSchemas;
import polewright.report.json.SchemaCoverage;
import polewright.report.json.WatchJson;

/** Nights in which every command prints each variant of its JSON. */
final class PrintedOutputs {
    private static final String LARKFELL = "54.60,-2.90,240";
    private static final String POLE = "--near=pole";
    private static final String WITHIN = "--within=25";

    private final Path folder;
    private final SchemaCoverage coverage;

    private PrintedOutputs(Path folder, SchemaCoverage coverage) {
        this.folder = folder;
        this.coverage = coverage;
    }

    static void all(Path folder, SchemaCoverage coverage) throws IOException {
        PrintedOutputs outputs = new PrintedOutputs(folder, coverage);
        outputs.sky();
        outputs.nightByEye();
        outputs.cloudedOver();
        outputs.contradictions();
        outputs.finish();
        outputs.work();
        outputs.centrings();
        outputs.nightsCopied();
        outputs.frames();
        outputs.pier();
        outputs.practice();
        outputs.devices();
    }

    private CommandRun person(String name, String now) throws IOException {
        return new CommandRun(Files.createDirectories(folder.resolve(name)), now);
    }

    private JsonNode json(CommandRun person, String... typed) {
        List<String> words = new ArrayList<>(List.of(typed));
        words.add("--json");
        CommandRun.Outcome outcome = person.good(words.toArray(String[]::new));
        List<PublishedSchemas.Checked> printed = PublishedSchemas.check(words, outcome.out());
        coverage.add(printed);
        return printed.get(printed.size() - 1).value();
    }

    private void sky() throws IOException {
        CommandRun person = person("sky", "2026-11-25T18:30:00Z");
        json(person, "where", "vega", "--site", LARKFELL);
        json(person, "ground", "--site", LARKFELL, "--at", "2026-11-25T12:00Z");
        json(person, "stars", "--site", LARKFELL);
        json(person, "stars", "--site", LARKFELL, "--at", "2026-12-24T18:30Z", "--count", "5");
        json(person, "stars", "--site", LARKFELL, "--at", "2026-06-21T12:00Z", "--aperture", "20");
        json(person, "chart", "M 31", "--site", LARKFELL);
        json(person, "upright", "--site", LARKFELL, "--focal-length", "1200", "--pixel", "3.76");
    }

    /** Continues until there is nothing left to sight. */
    private void cloudedOver() throws IOException {
        CommandRun person = person("clouds", "2026-11-25T20:05:00Z");
        json(person, "begin", "--site", LARKFELL);
        json(person, "skip", "no-instrument", "--sighting", "compass");
        json(person, "skip", "no-instrument", "--sighting", "scale");
        while (json(person, "next").get("do").asText().equals("sight")) {
            json(person, "skip", "cloud");
        }
    }

    /** From the first reading to a turn, with the output in between. */
    private void nightByEye() throws IOException {
        CommandRun person = person("eye", "2026-11-25T20:05:00Z");
        json(person, "begin", "--site", LARKFELL, "--name", "Larkfell", "--at", "2026-11-25T19:30Z");
        json(person, "fix");
        json(person, "next");
        json(person, "sight", "compass", "4");
        json(person, "sight", "scale", "54.5");
        json(person, "advise");
        json(person, "sight", "still", "polaris", "--distance", "0.2", "--toward", "4.5", "--with", "finder");
        json(person, "next");
        json(person, "advise");
        json(person, "fix");
        json(person, "turn", "--altitude", "1/4");
        json(person, "clamp");
        json(person, "next");
        json(person, "unclamp");
        json(person, "knock");
        json(person, "note", "dew on the finder");
        json(person, "retime", "2", "3", "--add", "1");
        json(person, "sight", "scale", "54.4", "--instead-of", "3");
        json(person, "rig", "correct", "--azimuth-reversed");
        json(person, "site", "correct", "--height", "300");
        json(person, "undo");
        json(person, "target", "M 33");
        json(person, "target", "M 8");
        json(person, "horizon", "0,8", "95,22.5", "180,4");
        json(person, "horizon");
        json(person, "allow");
        json(person, "allow", "3");
        json(person, "tonight");
        json(person, "log");
        json(person, "log", "nights");
        CommandRun morning = person("morning", "2026-11-27T07:40:00Z");
        morning.good("begin", "--site", LARKFELL);
        json(morning, "tonight", "--target", "venus", "--target", "mercury");
        CommandRun tilted = person("tilted", "2026-11-25T20:05:00Z");
        tilted.good("begin", "--site", LARKFELL);
        json(tilted, "sight", "scale", "54.5", "--sigma", "0.1");
        json(tilted, "sight", "compass", "12", "--sigma", "0.2");
        json(tilted, "next");
        CommandRun byDay = person("day", "2026-11-25T12:00:00Z");
        byDay.good("begin", "--site", LARKFELL);
        byDay.good("sight", "compass", "4");
        byDay.good("sight", "scale", "54.5");
        byDay.good("sight", "shadow", "0");
        json(byDay, "next");
    }

    private void contradictions() throws IOException {
        CommandRun person = person("dubious", "2026-11-25T20:05:00Z");
        person.good("begin", "--site", LARKFELL);
        person.good("sight", "scale", "54.6", "--sigma", "0.1");
        json(person, "sight", "bearing", "vega", "100", "--sigma", "0.1", "--as-typed");
        json(person, "sight", "bearing", "capella", "100", "--sigma", "0.1", "--as-typed");
        json(person, "sight", "altitude", "vega", "20", "--sigma", "0.1", "--as-typed");
        json(person, "fix");
        // The third was seen in an inverted view but logged as if it were erect.
        String still = """
                {"at":"2026-01-15T18:%s:00Z","event":"still_point","star":"Polaris","count":0.15,"unit":"fields",\
                "field_deg":6,"star_clock":4.5,"view":{"orientation":"%s"},"sigma_deg":0.05}
                """;
        Path night = Files.writeString(
                folder.resolve("upside-down.jsonl"),
                """
                {"at":"2026-01-15T17:30:00Z","event":"begin","site_name":"Larkfell","site":{"lat_deg":54.6,"lon_deg":-2.9}}
                """
                        + still.formatted("20", "inverted")
                        + still.formatted("24", "inverted")
                        + still.formatted("28", "erect"));
        json(person, "replay", night.toString());
        CommandRun swapped = person("swapped", "2026-11-25T20:05:00Z");
        swapped.good("begin", "--site", LARKFELL);
        swapped.good("sight", "compass", "0");
        swapped.good("sight", "scale", "54.6");
        swapped.good("sight", "still", "polaris", "--distance", "0.1", "--toward", "3", "--with", "finder");
        swapped.waitMinutes(4 * 60);
        List<String> drift =
                List.of("sight", "drift", "rigel", "--minutes", "5", "--moved", "30", "--unit", "arcsec", "--toward");
        for (String toward : List.of("south", "south", "south", "north")) {
            List<String> one = new ArrayList<>(drift);
            one.add(toward);
            json(swapped, one.toArray(String[]::new));
        }
    }

    /** A screw that should finish clockwise overshoots and comes back. */
    private void finish() throws IOException {
        CommandRun person = person("finish", "2026-11-25T20:05:00Z");
        Path rig = Files.writeString(
                folder.resolve("rig.json"), person.good("rig").out().replace("\"either\"", "\"clockwise\""));
        person.good("begin", "--site", LARKFELL, "--rig", rig.toString());
        person.good("sight", "scale", "55.6", "--sigma", "0.1");
        person.good("sight", "compass", "7", "--sigma", "0.1");
        json(person, "next");
        CommandRun other = person("finish-other", "2026-11-25T20:05:00Z");
        other.good("begin", "--site", LARKFELL, "--rig", rig.toString());
        other.good("sight", "scale", "53.6", "--sigma", "0.1");
        other.good("sight", "compass", "-3", "--sigma", "0.1");
        json(other, "next");
    }

    private void work() throws IOException {
        CommandRun person = person("work", "2026-11-25T20:05:00Z");
        person.good("begin", "--site", LARKFELL);
        json(person, "allow", "look", "the pole", "--above", "30", "--to-the-pole", "--field", "0.8", "--by-hand");
        json(
                person,
                "allow",
                "look",
                "casual look",
                "--above",
                "30",
                "--field",
                "0.8",
                "--stay",
                "15",
                "--go-to",
                "24");
        json(
                person,
                "allow",
                "shot",
                "ring",
                "--exposure",
                "120",
                "--target",
                "M 57",
                "--guided",
                "20",
                "--focal-length",
                "1200",
                "--pixel",
                "7.5");
        person.good("sight", "scale", "54.6", "--sigma", "0.1");
        person.good("sight", "compass", "2", "--sigma", "0.1");
        json(person, "allow");
        json(person, "advise");
        json(person, "tonight", "--for", "camera");
        json(person, "allow", "drop", "ring");
    }

    /** A table whose readings are the stars' apparent places, except for one. */
    private void centrings() throws IOException {
        String now = "2026-01-15T20:00:00Z";
        CommandRun person = person("centrings", now);
        person.good("begin", "--site", LARKFELL);
        StringBuilder table = new StringBuilder("time,star,ra,dec\n");
        for (String star : List.of("capella", "aldebaran", "polaris", "castor", "procyon", "mirfak", "hamal")) {
            JsonNode place = json(person, "where", star, "--site", LARKFELL, "--at", now);
            double ra = place.get("ra_of_date_deg").asDouble() + 1;
            double dec = place.get("dec_of_date_deg").asDouble() + 0.3;
            table.append(String.format(Locale.ROOT, "%s,%s,%.4f,%.4f%n", now, star, ra, dec));
        }
        Path csv = Files.writeString(folder.resolve("centrings.csv"), table);
        json(person, "centre", "--csv", csv.toString());
        json(person, "centre", "capella", "--reads", "79.1,46.1");
        json(person, "pointing");
        json(person, "fix");
    }

    private void nightsCopied() throws IOException {
        CommandRun person = person("eye", "2026-11-25T23:05:00Z");
        Path night = folder.resolve("night.jsonl");
        json(person, "log", "export", night.toString());
        json(person, "log", "import", night.toString());
        String once = Files.readString(night);
        json(
                person,
                "log",
                "import",
                Files.writeString(folder.resolve("two.jsonl"), once + once).toString());
        json(person, "log", "rescue", folder.resolve("rescued.jsonl").toString());
        json(person, "replay", night.toString());
        json(person("demo", "2026-11-25T23:05:00Z"), "demo", "--by-eye");
    }

    private void frames() throws IOException {
        CommandRun person = person("frames", "2026-11-25T20:20:00Z");
        person.good("begin", "--site", LARKFELL, "--at", "2026-11-25T19:30Z");
        CameraEvening evening = CameraEvening.atLarkfell();
        Path captures = Files.createDirectories(folder.resolve("captures"));
        List<String> turned = evening.takeTurning(captures, 2, 60).stream()
                .map(Path::toString)
                .toList();
        json(person, "attitude", turned.get(0), POLE, WITHIN, "--site", LARKFELL);
        json(person, "axis", turned.get(0), turned.get(1), POLE, WITHIN, "--site", LARKFELL, "--drive=standing");
        evening.turnScrews(-2, 0.5);
        evening.take(captures.resolve("turn3.fits"));
        Files.writeString(captures.resolve("turn4.fits"), "no frame");
        watch(person, captures);
        coverage.add(PublishedSchemas.check(
                List.of("watch"),
                WatchJson.refused("cloud.fits", "no stars are found").toString()));
        person.good("begin", "--site", LARKFELL, "--at", "2026-11-25T19:30Z", "--again");
        json(person, "sight", "frames", turned.get(0), turned.get(1), POLE, WITHIN, "--drive=tracking");
        evening.pointAt(0, 55);
        List<String> drift = new ArrayList<>(List.of("sight", "drift-frames", POLE, "--within=40"));
        for (int i = 0; i < 3; i++) {
            drift.add(evening.take(folder.resolve("drift" + i + ".fits")).toString());
            evening.waitSeconds(120);
        }
        json(person, drift.toArray(String[]::new));
    }

    /** Uses a clock that advances whenever the watch waits. */
    private void watch(CommandRun person, Path captures) {
        SettableClock clock = new SettableClock(Instant.parse("2026-11-25T20:20:00Z"));
        StringWriter out = new StringWriter();
        Workbench bench = new Workbench(
                clock,
                Map.of("POLEWRIGHT_LOG", person.log().toString()),
                new PrintWriter(out),
                new PrintWriter(new StringWriter()),
                false,
                clock::advance);
        List<String> typed =
                List.of("watch", captures.toString(), "--all", POLE, WITHIN, "--until-idle", "3", "--json");
        assertThat(Main.run(bench, typed.toArray(String[]::new))).isZero();
        coverage.add(PublishedSchemas.check(typed, out.toString()));
    }

    /** Nights a month apart: 1′ east each month, a yearly swing, one reset, and one night without a result. */
    private void pier() throws IOException {
        CommandRun person = person("pier", "2026-11-25T20:05:00Z");
        Instant first = Instant.parse("2024-10-01T20:00:00Z");
        for (int month = 0; month < 26; month++) {
            Instant at = first.plus(30L * month, ChronoUnit.DAYS);
            double swing = 6 * Math.cos(2 * Math.PI * month * 30 / 365.25);
            double azimuth = (month + swing) / 60 + (month > 20 ? 3 : 0) + (month == 10 ? 0.5 : 0);
            Path night = folder.resolve("pier-" + month + ".jsonl");
            Files.writeString(night, """
                    {"at":"%1$s","event":"begin","site_name":"Larkfell","site":{"lat_deg":54.6,"lon_deg":-2.9}}
                    {"at":"%1$s","event":"compass","magnetic_bearing_deg":%2$.5f,"declination_deg":0,"sigma_deg":0.01}
                    {"at":"%1$s","event":"scale","altitude_deg":54.6,"sigma_deg":0.01}
                    """.formatted(at, azimuth));
            if (month == 24) {
                Files.writeString(night, "{\"at\":\"" + at + "\",\"event\":\"knock\"}\n", StandardOpenOption.APPEND);
            }
            person.good("log", "import", night.toString());
            if (month == 0 || month == 9) {
                json(person, "log", "seasons", "--night", "1");
            }
        }
        json(person, "log", "seasons", "--night", "1");
        json(person, "log", "compare", "3", "4");
    }

    private void practice() throws IOException {
        CommandRun person = person("practice", "2026-06-21T11:00:00Z");
        json(person, "practice", "begin", "--camera");
        json(person, "practice");
        json(person, "practice", "look", "compass");
        json(person, "practice", "look", "scale");
        json(person, "practice", "look", "rocking");
        json(person, "practice", "look", "drift", "capella", "--minutes", "5");
        json(person, "practice", "screw", "azimuth", "1/4");
        json(person, "practice", "move", "--right=1");
        json(person, "practice", "frame", "--turned=0");
        json(person, "practice", "wait", "5");
        json(person, "practice", "clamp");
        json(person, "practice", "unclamp");
        json(person, "practice", "debrief");
    }

    private void devices() throws IOException {
        CommandRun person = person("devices", "2026-11-25T20:05:00Z");
        new PairedDevices(person.file("data/polewright")).pair("Tent", Instant.parse("2026-11-26T20:00:00Z"));
        json(person, "devices");
        json(person, "devices", "revoke", "all");
    }
}
