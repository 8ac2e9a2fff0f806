package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** RFC 8996 (2021) withdraws TLS 1.0 and 1.1. */
@Tag("slow")
class TlsVersionsTest {
    @TempDir
    private Path folder;

    @Test
    void secureServer_acceptsOnlyTls12And13_evenIfJavaForbidsNone() throws Exception {
        Process program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Dorg.slf4j.simpleLogger.defaultLogLevel=off",
                        "-cp",
                        System.getProperty("java.class.path"),
                        TlsVersionsProgram.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        List<String> message;
        try (var output = program.inputReader()) {
            message = output.lines().toList();
        }
        assertThat(program.waitFor()).isZero();
        assertThat(message)
                .containsExactly(
                        "secure TLSv1 refused",
                        "secure TLSv1.1 refused",
                        "secure TLSv1.2 taken as TLSv1.2",
                        "secure TLSv1.3 taken as TLSv1.3",
                        "any TLSv1 taken as TLSv1",
                        "any TLSv1.1 taken as TLSv1.1",
                        "any TLSv1.2 taken as TLSv1.2",
                        "any TLSv1.3 taken as TLSv1.3");
    }
}
