package polewright.web;

import java.io.IOException;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.Security;
import java.security.cert.X509Certificate;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLServerSocket;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509ExtendedTrustManager;
import polewright.web.access.ServerCertificate;

/**
 * A separate program in which Java forbids no version of TLS. It offers each version alone to the server of {@code
 * serve --secure}, and to a plain server that accepts all of them, and prints whether they agreed.
 *
 * <p>Java reads its list of forbidden versions once, before the first connection of a process. Argument: a folder to
 * work in.
 */
public final class TlsVersionsProgram {
    private static final String[] VERSIONS = {"TLSv1", "TLSv1.1", "TLSv1.2", "TLSv1.3"};

    private TlsVersionsProgram() {}

    public static void main(String[] arguments) throws Exception {
        Security.setProperty("jdk.tls.disabledAlgorithms", "");
        Path folder = Path.of(arguments[0]);
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        try (KnockedDoor server = new KnockedDoor(folder, true)) {
            for (String version : VERSIONS) {
                out.println("secure " + version + " " + answer(version, server.port()));
            }
        }
        try (SSLServerSocket any = acceptingAll(folder)) {
            Thread taking = new Thread(() -> serve(any));
            taking.setDaemon(true);
            taking.start();
            for (String version : VERSIONS) {
                out.println("any " + version + " " + answer(version, any.getLocalPort()));
            }
        }
        System.exit(0);
    }

    private static String answer(String version, int port) throws IOException, GeneralSecurityException {
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, new TrustManager[] {new Trusting()}, null);
        try (SSLSocket socket =
                (SSLSocket) context.getSocketFactory().createSocket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(20_000);
            socket.setEnabledProtocols(new String[] {version});
            socket.startHandshake();
            return "taken as " + socket.getSession().getProtocol();
        } catch (SSLException | SocketException refused) {
            return "refused";
        }
    }

    /** Uses the server's own certificate. */
    private static SSLServerSocket acceptingAll(Path folder) throws IOException, GeneralSecurityException {
        char[] password = "polewright".toCharArray();
        Path certificate = folder.resolve("data").resolve("polewright").resolve(ServerCertificate.FILE);
        KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        keys.init(KeyStore.getInstance(certificate.toFile(), password), password);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(keys.getKeyManagers(), null, null);
        SSLServerSocket any = (SSLServerSocket)
                context.getServerSocketFactory().createServerSocket(0, 50, InetAddress.getLoopbackAddress());
        any.setEnabledProtocols(VERSIONS);
        return any;
    }

    private static void serve(SSLServerSocket any) {
        while (true) {
            try (SSLSocket socket = (SSLSocket) any.accept()) {
                socket.startHandshake();
            } catch (IOException closed) {
                if (any.isClosed()) {
                    return;
                }
            }
        }
    }

    /** Trusts any certificate: only the TLS version matters here. */
    private static final class Trusting extends X509ExtendedTrustManager {
        @Override
        public void checkClientTrusted(X509Certificate[] chain, String type) {}

        @Override
        public void checkServerTrusted(X509Certificate[] chain, String type) {}

        @Override
        public void checkClientTrusted(X509Certificate[] chain, String type, Socket socket) {}

        @Override
        public void checkServerTrusted(X509Certificate[] chain, String type, Socket socket) {}

        @Override
        public void checkClientTrusted(X509Certificate[] chain, String type, SSLEngine engine) {}

        @Override
        public void checkServerTrusted(X509Certificate[] chain, String type, SSLEngine engine) {}

        @Override
        public X509Certificate[] getAcceptedIssuers() {
            return new X509Certificate[0];
        }
    }
}
