package polewright.web.access;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.time.Duration;
import java.util.Collections;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.http.HttpParser;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.ssl.SslConnection;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.internal.HttpConnection;

/**
 * Keeps connections available: a client that is slow to send a request's head is cut off, on the first request or a
 * later one, and no address may hold more than its share of the connections. An idle timeout alone achieves neither:
 * a byte a second is not idle.
 */
final class ConnectionWatch implements Connection.Listener {
    /** Most connections that one address may hold: a browser opens six, and a person has a few. */
    static final int MOST_FROM_AN_ADDRESS = 48;

    private static final long BETWEEN_LOOKS_MILLIS = 500;

    private final AbstractConnector connector;
    private final Duration patience;
    // A closed socket has no remote address.
    private final Map<Connection, InetAddress> open = new ConcurrentHashMap<>();

    private ConnectionWatch(AbstractConnector connector, Duration patience) {
        this.connector = connector;
        this.patience = patience;
    }

    /** Installs the watch; call before the connector starts. */
    static void install(AbstractConnector connector, Duration patience) {
        ConnectionWatch watch = new ConnectionWatch(connector, patience);
        connector.setIdleTimeout(patience.toMillis());
        connector.addBean(watch);
        connector.addEventListener(new org.eclipse.jetty.util.component.LifeCycle.Listener() {
            @Override
            public void lifeCycleStarted(org.eclipse.jetty.util.component.LifeCycle event) {
                watch.scheduleCheck();
            }
        });
    }

    @Override
    public void onOpened(Connection connection) {
        boolean isShell = connection instanceof SslConnection; // The decrypted connection is opened inside it at once.
        if (!isShell && connection.getEndPoint().getRemoteSocketAddress() instanceof InetSocketAddress remote) {
            open.put(connection, remote.getAddress());
            if (Collections.frequency(open.values(), remote.getAddress()) > MOST_FROM_AN_ADDRESS) {
                connection.close();
            }
        }
    }

    @Override
    public void onClosed(Connection connection) {
        open.remove(connection);
    }

    private void scheduleCheck() {
        if (connector.isRunning()) {
            var unused = connector.getScheduler().schedule(this::look, BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS);
        }
    }

    private void look() {
        try {
            for (Connection connection : open.keySet()) {
                if (connection instanceof HttpConnection http && isSlow(http)) {
                    connection.getEndPoint().close();
                }
            }
        } finally {
            scheduleCheck();
        }
    }

    private boolean isSlow(HttpConnection connection) {
        // Covers a client that never sends a request: a handshake, or empty lines, a byte at a time.
        if (connection.getMessagesIn() == 0) {
            return System.currentTimeMillis() - connection.getCreatedTimeStamp() > patience.toMillis();
        }
        HttpParser parser = connection.getParser();
        return parser.inHeaderState()
                && !parser.isStart()
                && System.nanoTime() - parser.getBeginNanoTime() > patience.toNanos();
    }
}
