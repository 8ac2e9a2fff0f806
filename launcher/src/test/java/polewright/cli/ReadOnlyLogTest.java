package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.operations.ExitStatus;
import polewright.operations.SmallDisk;

/** A log that can be read but not written: nothing is added, nothing is lost, and the message says what to do. */
@EnabledOnOs(OS.LINUX)
class ReadOnlyLogTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void begin() {
        person = new CommandRun(folder, "2026-01-15T20:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        person.good("note", "dew");
    }

    private void assertReadsAndRefuses(Path log) throws IOException {
        byte[] before = Files.readAllBytes(log);
        for (List<String> words :
                List.of(List.of("note", "clouds"), List.of("sight", "scale", "54.6"), List.of("begin", "--again"))) {
            List<String> typed = new ArrayList<>(words);
            typed.addAll(List.of("--log", log.toString()));
            CommandRun.Outcome refused = person.run(typed.toArray(String[]::new));
            assertThat(refused.status()).as("%s", words).isEqualTo(ExitStatus.NOT_NOW);
            assertThat(refused.err())
                    .contains(log + " is not writable, so nothing was logged. Allow writing to it and to its folder,"
                            + " or name another file.");
        }
        assertThat(Files.readAllBytes(log)).isEqualTo(before);
        assertThat(person.good("log", "--log", log.toString()).lines()).hasSize(2);
    }

    @Test
    void readOnlyDisk() throws IOException {
        try (SmallDisk disk = SmallDisk.mounted(folder.resolve("card"), "size=512k")) {
            Path log = disk.folder().resolve("nights.sqlite");
            Files.copy(person.log(), log);
            disk.makeReadOnly();
            assertReadsAndRefuses(log);
            assertThat(disk.names()).containsExactly("nights.sqlite");
        }
    }

    @Test
    void readOnlyFileInAWritableFolder() throws IOException {
        Path log = Files.copy(person.log(), folder.resolve("locked.sqlite"));
        try (SmallDisk file = SmallDisk.readOnlyFile(log)) {
            assertReadsAndRefuses(file.folder());
        }
    }
}
