package polewright.web.access;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicReference;
import org.eclipse.jetty.http.HttpVersion;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.ConnectionFactory;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.DetectorConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.server.handler.MinimumDataRateHandler;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import polewright.operations.OperationFailed;
import polewright.operations.device.PairedDevice;
import polewright.operations.device.PairedDevices;
import polewright.web.form.PageWording;

/** Checks every request before any page sees it. */
public final class AccessControl {
    /** The cookie with a device's token. */
    public static final String COOKIE = "polewright";

    /**
     * The cookie over an encrypted connection (RFC 6265bis, cookie name prefixes). It has another name because a
     * browser lets no plain response replace a secure cookie: the device could not be paired again without --secure.
     */
    public static final String SECURE_COOKIE = "__Host-" + COOKIE;

    private static final int A_YEAR_SECONDS = 31_536_000;
    private static final int MOST_CONNECTIONS = 200;
    private static final int TOO_LARGE = 413;
    private static final int HEAD_BYTES = 8 * 1024;
    private static final int SLOWEST_BYTES_A_SECOND = 200;
    private static final String PAIR = "/pair";
    private static final Duration REST = Duration.ofMinutes(1);
    private static final String RESTING =
            "Too many wrong codes. That code is no longer valid. Wait a minute, then open this page again for a new"
                    + " one.";

    private final AccessSettings settings;
    private final PairingPage page;
    private final Set<String> open;
    private final AtomicReference<PairingCode> code;
    private final OpenStreams streams = new OpenStreams();
    private final Queue<String> news = new ConcurrentLinkedQueue<>();
    private Instant exhausted = Instant.MIN;

    /** Renders the page for a device that is not paired; the only page needed here, and drawn elsewhere. */
    @FunctionalInterface
    public interface PairingPage {
        /**
         * The page's HTML.
         *
         * @param complaint what went wrong, or empty
         */
        String html(String complaint);
    }

    public AccessControl(AccessSettings settings, PairingPage page) {
        this.settings = settings;
        this.page = page;
        open = new HashSet<>(settings.open());
        open.add(PAIR);
        code = new AtomicReference<>(PairingCode.fresh(settings.clock()));
    }

    /** The code that was shown last. */
    public PairingCode code() {
        return Objects.requireNonNull(code.get());
    }

    /** Messages for the terminal since the last call: a code for a waiting device, or a device that was paired. */
    public List<String> news() {
        List<String> sentences = new ArrayList<>();
        for (String next = news.poll(); next != null; next = news.poll()) {
            sentences.add(next);
        }
        return sentences;
    }

    /**
     * Called when the pairing page is opened: if the last code is void, the terminal shows another. No new code
     * appears unless that page is opened, or codes would fill the terminal all night. After wrong guesses there is a
     * pause, so that it cannot be filled from outside either.
     *
     * @return whether there is a code to type
     */
    private synchronized boolean pairingPageOpened() {
        PairingCode last = code();
        if (!last.isVoid()) {
            return true;
        }
        Instant now = settings.clock().instant();
        if (last.isExhausted()) {
            if (exhausted.equals(Instant.MIN)) {
                exhausted = now;
            }
            if (now.isBefore(exhausted.plus(REST))) {
                return false;
            }
        }
        exhausted = Instant.MIN;
        PairingCode next = PairingCode.fresh(settings.clock());
        code.set(next);
        news.add("A device asks to be paired. If it is yours, enter this code on it: " + next.grouped());
        return true;
    }

    /** The open event streams of this server. */
    public OpenStreams streams() {
        return streams;
    }

    /** Who sent this request: the id of a paired device, or the address of this machine. */
    public String deviceOf(Context ctx) {
        return holder(token(ctx))
                .map(PairedDevice::id)
                .orElseGet(() -> ctx.req().getRemoteAddr());
    }

    /** Whether a device that was admitted with this request would be admitted now. */
    public boolean isStillIn(Context ctx) {
        try {
            return token(ctx).isEmpty() || holder(token(ctx)).isPresent();
        } catch (OperationFailed damaged) {
            return false;
        }
    }

    private static String token(Context ctx) {
        return Optional.ofNullable(ctx.cookie(cookie(ctx))).orElse("");
    }

    private static String cookie(Context ctx) {
        return ctx.req().isSecure() ? SECURE_COOKIE : COOKIE;
    }

    private Optional<PairedDevice> holder(String token) {
        return token.isEmpty()
                ? Optional.empty()
                : settings.devices().holderOf(token, settings.clock().instant());
    }

    /** Guards the routes of this server: call before any other route is added. */
    public void install(JavalinConfig config) {
        config.http.maxRequestSize = Admission.FORM_BYTES;
        config.jetty.modifyHttpConfiguration(http -> {
            http.setRequestHeaderSize(HEAD_BYTES);
            http.setSendServerVersion(false);
            // The names of this server are checked by {@link Admission}, the same way for all requests.
            settings.certificate().ifPresent(own -> http.addCustomizer(new SecureRequestCustomizer(false)));
        });
        config.jetty.modifyServletContextHandler(context -> context.setErrorHandler(new PlainErrors()));
        config.jetty.modifyServer(server -> {
            server.setErrorHandler(new PlainErrors());
            // For request bodies only: an event stream is meant to be slow.
            server.insertHandler(new MinimumDataRateHandler(SLOWEST_BYTES_A_SECOND, 0));
            server.addBean(new NetworkConnectionLimit(MOST_CONNECTIONS, server));
            server.addEventListener(new org.eclipse.jetty.util.component.LifeCycle.Listener() {
                @Override
                public void lifeCycleStarting(org.eclipse.jetty.util.component.LifeCycle event) {
                    for (Connector connector : server.getConnectors()) {
                        if (connector instanceof AbstractConnector listening) {
                            ConnectionWatch.install(listening, settings.patience());
                            settings.certificate().ifPresent(own -> encrypt(listening, own));
                        }
                    }
                }
            });
        });
        config.routes.before(this::admit);
        config.routes.get(PAIR, this::showPairingPage);
        config.routes.post(PAIR, this::pair);
    }

    /** On the same port: a client that opens the address as typed, without https, is redirected. */
    private static void encrypt(AbstractConnector connector, ServerCertificate own) {
        SslContextFactory.Server ssl = new SslContextFactory.Server();
        ssl.setKeyStorePath(own.file().toString());
        ssl.setKeyStorePassword(ServerCertificate.PASSWORD);
        ssl.setIncludeProtocols("TLSv1.3", "TLSv1.2");
        List<ConnectionFactory> factories = new ArrayList<>();
        factories.add(new DetectorConnectionFactory(new SslConnectionFactory(ssl, HttpVersion.HTTP_1_1.asString())));
        factories.addAll(connector.getConnectionFactories());
        connector.setConnectionFactories(factories);
    }

    private void admit(Context ctx) {
        GuardHeaders.ALL.forEach(ctx::header);
        Admission admission;
        try {
            admission = Admission.of(
                    asking(ctx),
                    settings.names(),
                    ctx.req().getLocalPort(),
                    open,
                    settings.uploads(),
                    settings.certificate().isPresent());
        } catch (OperationFailed damaged) {
            admission = new Admission.Refused(503, PageWording.GENERAL.of(String.valueOf(damaged.getMessage())));
        }
        if (admission instanceof Admission.Refused refused) {
            ctx.status(refused.status()).contentType("text/plain; charset=utf-8");
            if (refused.status() == TOO_LARGE) {
                readRestThenAnswer(ctx, refused.sentence());
            } else {
                ctx.result(refused.sentence());
            }
            ctx.skipRemainingHandlers();
        } else if (admission instanceof Admission.ToSecure elsewhere) {
            ctx.status(307).header("Location", elsewhere.address());
            ctx.skipRemainingHandlers();
        } else if (admission instanceof Admission.NeedsPairing) {
            ctx.status(401);
            String accept = Optional.ofNullable(ctx.header("Accept")).orElse("");
            if (ctx.req().getMethod().equals("GET") && accept.contains("text/html")) {
                showPairingPage(ctx);
            } else {
                ctx.contentType("text/plain; charset=utf-8")
                        .result("This device is not paired. Open " + PAIR
                                + " and enter the code that the terminal shows.");
            }
            ctx.skipRemainingHandlers();
        }
    }

    /**
     * A client cut off while still sending sees a broken connection instead of the message, so the rest of the body
     * is read.
     */
    private void readRestThenAnswer(Context ctx, String sentence) {
        byte[] answer = sentence.getBytes(StandardCharsets.UTF_8);
        long limit = settings.uploads().contains(ctx.path()) ? Admission.FRAME_BYTES : Admission.FORM_BYTES;
        try {
            ctx.res().setContentLength(answer.length);
            ctx.res().getOutputStream().write(answer);
            ctx.res().flushBuffer();
            InputStream rest = ctx.req().getInputStream();
            byte[] unread = new byte[8192];
            long left = 2 * limit;
            for (int read = rest.read(unread); read >= 0 && left > 0; read = rest.read(unread)) {
                left -= read;
            }
        } catch (IOException disconnected) {
            // The client has gone.
        }
    }

    private Admission.Asking asking(Context ctx) {
        var request = ctx.req();
        boolean isLoopback = isLoopback(request.getRemoteAddr());
        String token = token(ctx);
        boolean isPaired = holder(token).isPresent();
        return new Admission.Asking(
                request.getMethod(),
                target(ctx),
                ctx.path(),
                List.copyOf(Collections.list(request.getHeaders("Host"))),
                List.copyOf(Collections.list(request.getHeaders("Origin"))),
                Optional.ofNullable(ctx.header("Sec-Fetch-Site")),
                isLoopback,
                isPaired,
                request.getContentLengthLong(),
                Optional.ofNullable(ctx.header("Transfer-Encoding")),
                request.isSecure());
    }

    /** As sent, except for an absolute address, which the servlet interface cuts to its path. */
    private static String target(Context ctx) {
        return ctx.req().getRequestURI();
    }

    private static boolean isLoopback(String address) {
        try {
            return InetAddress.getByName(address.replaceAll("[\\[\\]]", "")).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }

    private void showPairingPage(Context ctx) {
        // A page left open polls automatically, which does not mean that a user is waiting.
        boolean isPerson = ctx.header("HX-Request") == null;
        ctx.html(page.html(!isPerson || pairingPageOpened() ? "" : RESTING));
    }

    private void pair(Context ctx) {
        String typed = Optional.ofNullable(ctx.formParam("code")).orElse("");
        PairingCode.Answer answer =
                Objects.requireNonNull(code.get()).guess(typed, ctx.req().getRemoteAddr());
        if (answer == PairingCode.Answer.RIGHT) {
            String name = Optional.ofNullable(ctx.formParam("name")).orElse("");
            PairedDevices.Welcome welcome = settings.devices()
                    .pair(
                            name.isBlank() ? deviceType(ctx.userAgent()) : name,
                            settings.clock().instant());
            ctx.res()
                    .addHeader(
                            "Set-Cookie",
                            cookie(ctx) + "=" + welcome.token() + "; Path=/; Max-Age=" + A_YEAR_SECONDS
                                    + "; HttpOnly; SameSite=Strict" + (ctx.req().isSecure() ? "; Secure" : ""));
            news.add("Paired: " + welcome.device().name() + ". If it is not yours: polewright devices revoke "
                    + welcome.device().id());
            ctx.status(303).header("Location", "/");
            return;
        }
        ctx.status(answer == PairingCode.Answer.TOO_SOON ? 429 : 403);
        boolean hasCode = answer != PairingCode.Answer.VOID || pairingPageOpened();
        ctx.html(page.html(hasCode ? complaint(answer) : RESTING));
    }

    private static String complaint(PairingCode.Answer answer) {
        return switch (answer) {
            case RIGHT -> "";
            case WRONG -> "Wrong code. Look at the terminal again and enter all eight characters.";
            case TOO_SOON -> "Too soon after a wrong code. Wait a few seconds, then try again.";
            case VOID -> "That code is no longer valid. Enter the new one that the terminal shows.";
        };
    }

    private static String deviceType(@org.jspecify.annotations.Nullable String agent) {
        String said = agent == null ? "" : agent;
        return said.contains("Mobile") ? "a phone" : said.contains("Tablet") ? "a tablet" : "a computer";
    }
}
