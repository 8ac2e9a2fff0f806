package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import polewright.launcher.Main;
import polewright.operations.CommandRun;
import polewright.operations.ExitStatus;
import polewright.operations.OperationFailed;
import polewright.operations.SmallDisk;
import polewright.operations.device.PairedDevices;

/** A full disk, a file size limit and a library that cannot be unpacked: each gets its own message. */
@EnabledOnOs(OS.LINUX)
@Tag("slow")
class FullDiskTest {
    private static final Instant NOW = Instant.parse("2026-01-15T20:00:00Z");

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void begin() {
        person = new CommandRun(folder, NOW.toString());
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        person.good("note", "dew");
    }

    private record Ended(int status, String err) {}

    /** A separate process, started as by the launcher, after some shell commands. */
    private Ended inAShell(String before, String options, String... words) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                "/bin/bash",
                "-c",
                before + "; exec \"$0\" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Xshare:auto " + options
                        + " -Dorg.slf4j.simpleLogger.defaultLogLevel=off -cp \"$1\" " + Main.class.getName()
                        + " \"${@:2}\"",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                System.getProperty("java.class.path")));
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command).redirectOutput(ProcessBuilder.Redirect.DISCARD);
        builder.environment().put("POLEWRIGHT_LOG", person.log().toString());
        Process process = builder.start();
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ended(process.waitFor(), err);
    }

    @Test
    void fileSizeLimitBelowTheLibrary_isReported() throws Exception {
        Ended ended = inAShell("ulimit -f 24", "-Djava.io.tmpdir=" + folder, "note", "clouds");
        assertThat(ended.status()).as(ended.err()).isEqualTo(ExitStatus.NOT_NOW);
        assertThat(ended.err())
                .isEqualTo("polewright note: the library that reads the log cannot be unpacked in " + folder
                        + ", so nothing was logged: this session limits files to 24,576 bytes and 1,500,000 are needed."
                        + " Start again without that limit (ulimit -f shows it); another folder can be named"
                        + " with"
                        + " JAVA_TOOL_OPTIONS=-Djava.io.tmpdir=FOLDER.\n");
        assertThat(person.events()).isEqualTo(2);
    }

    @Test
    void fileSizeLimitBelowTheLog_isReported() throws Exception {
        StringBuilder night = new StringBuilder(
                "{\"at\":\"2026-01-15T17:30:00Z\",\"event\":\"begin\",\"site_name\":\"Larkfell\",\"site\":{\"lat_deg\":54.6,\"lon_deg\":-2.9}}\n");
        for (int i = 0; i < 500; i++) {
            night.append("{\"at\":\"2026-01-15T17:30:00Z\",\"event\":\"note\",\"text\":\"")
                    .append("n".repeat(3500))
                    .append("\"}\n");
        }
        Path file = Files.writeString(person.file("long.jsonl"), night);
        person.good("log", "import", file.toString());
        // There is room for the library but none for the log.
        long blocks = Files.size(person.log()) / 1024;
        Ended ended = inAShell("ulimit -f " + blocks, "", "note", "clouds ".repeat(500));
        assertThat(ended.status()).as(ended.err()).isEqualTo(ExitStatus.NOT_NOW);
        assertThat(ended.err())
                .startsWith("polewright note: " + person.log()
                        + " cannot grow, so this was not logged; what was there is safe: this session limits files to ")
                .doesNotContain("internal error");
        assertThat(person.events()).isEqualTo(2);
    }

    @Test
    void fullOrNoexecLibraryFolder_isReported() throws Exception {
        try (SmallDisk small = SmallDisk.mounted(folder.resolve("small"), "size=64k")) {
            Ended ended = inAShell(":", "-Djava.io.tmpdir=" + small.folder(), "note", "clouds");
            assertThat(ended.status()).isEqualTo(ExitStatus.NOT_NOW);
            assertThat(ended.err())
                    .startsWith("polewright note: the library that reads the log cannot be unpacked in "
                            + small.folder() + ", so nothing was logged: the disk is full. Free some space");
        }
        try (SmallDisk mute = SmallDisk.mounted(folder.resolve("mute"), "size=8m,noexec")) {
            Ended ended = inAShell(":", "-Djava.io.tmpdir=" + mute.folder(), "note", "clouds");
            assertThat(ended.err())
                    .contains(
                            "cannot be unpacked in " + mute.folder(),
                            "the system does not allow programs to be loaded from there");
        }
        assertThat(person.events()).isEqualTo(2);
    }

    @Test
    void fullDisk_leavesNoEventPartialFileOrStrayList() throws IOException {
        try (SmallDisk disk = SmallDisk.mounted(folder.resolve("disk"), "size=512k")) {
            Path log = disk.folder().resolve("nights.sqlite");
            Files.copy(person.log(), log);
            PairedDevices devices = new PairedDevices(disk.folder());
            devices.pair("phone", NOW);
            disk.fill();
            List<String> before = disk.names();

            CommandRun.Outcome note = person.run("note", "clouds ".repeat(500), "--log", log.toString());
            assertThat(note.status()).isEqualTo(ExitStatus.NOT_NOW);
            assertThat(note.err())
                    .isEqualTo("polewright note: the disk with " + log
                            + " is full, so this was not logged; what was there is safe. Free some space and enter it"
                            + " again.\n");

            Path export = disk.folder().resolve("night.jsonl");
            assertThat(person.run("log", "export", export.toString()).complaint())
                    .isEqualTo("polewright log export: " + export
                            + " cannot be written: the disk is full. Free some space, or name a file on"
                            + " another disk.");

            assertThatThrownBy(() -> devices.pair("tablet", NOW))
                    .isInstanceOf(OperationFailed.class)
                    .hasMessageContaining("the disk is full");
            assertThat(devices.all()).hasSize(1);

            assertThat(disk.names()).isEqualTo(before);
            assertThat(person.good("log", "--log", log.toString()).lines()).hasSize(2);
        }
    }

    @Test
    void noteLimit_isTheSameForEveryInput() throws IOException {
        String tooLong = "x".repeat(4001);
        String refusal = "the note has 4,001 characters, and a note may have 4,000. Write it as several notes.";
        person.good("note", "x".repeat(4000));
        assertThat(person.run("note", tooLong).complaint()).isEqualTo("polewright note: " + refusal);
        Path file = Files.writeString(
                person.file("night.jsonl"),
                "{\"at\":\"2026-01-15T17:30:00Z\",\"event\":\"begin\",\"site_name\":\"Larkfell\",\"site\":{\"lat_deg\":54.6,\"lon_deg\":-2.9}}\n"
                        + "{\"at\":\"2026-01-15T17:31:00Z\",\"event\":\"note\",\"text\":\"" + tooLong + "\"}\n");
        assertThat(person.run("log", "import", file.toString()).complaint())
                .isEqualTo("polewright log import: " + refusal);
    }
}
