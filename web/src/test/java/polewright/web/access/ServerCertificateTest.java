package polewright.web.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.javalin.Javalin;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.MessageDigest;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Set;
import java.util.stream.Collectors;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.OperationFailed;
import polewright.operations.device.PairedDevices;

@Tag("slow")
class ServerCertificateTest {
    private final Instant now = Clock.systemUTC().instant();

    @TempDir
    private Path folder;

    private ServerCertificate certificate(String... names) {
        return ServerCertificate.in(folder, Set.of(names), now);
    }

    @Test
    void certificate_isPrivate_andReplacedWhenOutdated() throws Exception {
        ServerCertificate first = certificate("192.0.2.7", "larkfell.local");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(first.file())))
                .isEqualTo("rw-------");
        try (var files = Files.list(folder)) {
            assertThat(files).containsExactly(first.file());
        }
        assertThat(certificate("larkfell.local", "192.0.2.7")).isEqualTo(first);
        ServerCertificate moved = certificate("192.0.2.8", "larkfell.local");
        assertThat(moved.fingerprint()).isNotEqualTo(first.fingerprint());
        ServerCertificate later =
                ServerCertificate.in(folder, Set.of("192.0.2.8", "larkfell.local"), now.plus(Duration.ofDays(790)));
        assertThat(later.fingerprint()).isNotEqualTo(moved.fingerprint());
        Files.writeString(later.file(), "damaged");
        assertThat(certificate("192.0.2.8").fingerprint()).isNotEqualTo(later.fingerprint());
    }

    /** A laptop's host name that is no DNS name (RFC 1123, section 2.1) cannot be in a certificate. */
    @Test
    void nameThatIsNoDnsName_isLeftOut() throws Exception {
        String[] names = {
            "192.0.2.7",
            "larkfell.local",
            "big_box",
            "big_box.local",
            "-laptop",
            "laptop.",
            "a..b",
            "lärkfell",
            "123456789012",
            "1.2.3.400",
            "l".repeat(64)
        };
        ServerCertificate made = certificate(names);
        assertThat(names(made)).containsExactlyInAnyOrder("192.0.2.7", "larkfell.local", "localhost", "127.0.0.1");
        assertThat(certificate(names))
                .as("it is good for this laptop, and kept")
                .isEqualTo(made);
    }

    private static Set<String> names(ServerCertificate own) throws Exception {
        return certificate(own).getSubjectAlternativeNames().stream()
                .map(name -> String.valueOf(name.get(1)))
                .collect(Collectors.toSet());
    }

    private static X509Certificate certificate(ServerCertificate own) throws Exception {
        try (InputStream in = Files.newInputStream(own.file())) {
            KeyStore made = KeyStore.getInstance("PKCS12");
            made.load(in, ServerCertificate.PASSWORD.toCharArray());
            return (X509Certificate) made.getCertificate("polewright");
        }
    }

    @Test
    void failedKeytool_isReported() throws Exception {
        assertThatThrownBy(() -> ServerCertificate.in(folder, Set.of(), now, folder.resolve("keytool")))
                .isInstanceOf(OperationFailed.class)
                .hasMessageStartingWith("Java's keytool, which makes the certificate, is missing: ")
                .hasMessageEndingWith("leave out --secure.")
                .hasMessageNotContaining("room");
        Path broken = folder.resolve("broken");
        Files.writeString(broken, "#!/bin/sh\necho 'keytool error: java.lang.Exception: no such curve'\nexit 1\n");
        Files.setPosixFilePermissions(broken, PosixFilePermissions.fromString("rwx------"));
        assertThatThrownBy(() -> ServerCertificate.in(folder, Set.of(), now, broken))
                .isInstanceOf(OperationFailed.class)
                .hasMessageStartingWith("Java's keytool did not make the certificate. Its message: no such curve.")
                .hasMessageNotContaining("java.lang");
        Path file = Files.createFile(folder.resolve("file"));
        assertThatThrownBy(() -> ServerCertificate.in(file, Set.of(), now))
                .isInstanceOf(OperationFailed.class)
                .hasMessageStartingWith("The certificate cannot be written: ")
                .hasMessageContaining("Free some space");
    }

    /** A client that trusts only this certificate and checks that it contains the requested name. */
    @Test
    void strictTrustingClient_isServedUnderEachName() throws Exception {
        ServerCertificate own = certificate("larkfell.local");
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        X509Certificate seen = certificate(own);
        trusted.load(null, null);
        trusted.setCertificateEntry("own", seen);
        assertThat(HexFormat.ofDelimiter(":")
                        .withUpperCase()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(seen.getEncoded())))
                .isEqualTo(own.fingerprint());
        assertThat(seen.getPublicKey().getAlgorithm()).isEqualTo("EC");
        TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        trust.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, trust.getTrustManagers(), null);
        Javalin server = served(own);
        try {
            HttpClient client = HttpClient.newBuilder().sslContext(context).build();
            for (String name : Set.of("localhost", "127.0.0.1")) {
                HttpResponse<String> answer = client.send(
                        java.net.http.HttpRequest.newBuilder(URI.create("https://" + name + ":" + server.port() + "/"))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
                assertThat(answer.body()).isEqualTo("inside");
                assertThat(answer.headers().firstValue("Content-Security-Policy"))
                        .isPresent();
            }
        } finally {
            server.stop();
        }
    }

    private Javalin served(ServerCertificate own) {
        AccessSettings settings = new AccessSettings(
                        Set.of("larkfell.local"),
                        new PairedDevices(folder),
                        Clock.systemUTC(),
                        Set.of(),
                        Set.of(),
                        Duration.ofSeconds(5))
                .with(own);
        AccessControl door = new AccessControl(settings, complaint -> "<p>pair " + complaint);
        return Javalin.create(config -> {
                    config.startup.showJavalinBanner = false;
                    door.install(config);
                    config.routes.get("/", ctx -> ctx.result("inside"));
                })
                .start("127.0.0.1", 0);
    }
}
