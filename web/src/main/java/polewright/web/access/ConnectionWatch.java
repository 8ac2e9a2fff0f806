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
 * Keeps the way in free: who dawdles over a request's head is cut off, on the first request as on a later one, and no
 * address holds more than its share of the connections. Silence alone ends neither: a byte a second is not silent.
 */
final class ConnectionWatch implements Connection.Listener {
    /** Most connections that one address may hold: a browser opens six, and a person has a few. */
    static final int MOST_FROM_AN_ADDRESS = 48;

    private static final long BETWEEN_LOOKS_MILLIS = 500;

    private final AbstractConnector connector;
    private final Duration patience;
    // A closed socket no longer tells whose it was.
    private final Map<Connection, InetAddress> open = new ConcurrentHashMap<>();

    private ConnectionWatch(AbstractConnector connector, Duration patience) {
        this.connector = connector;
        this.patience = patience;
    }

    /** Before the connector starts. */
    static void over(AbstractConnector connector, Duration patience) {
        ConnectionWatch watch = new ConnectionWatch(connector, patience);
        connector.setIdleTimeout(patience.toMillis());
        connector.addBean(watch);
        connector.addEventListener(new org.eclipse.jetty.util.component.LifeCycle.Listener() {
            @Override
            public void lifeCycleStarted(org.eclipse.jetty.util.component.LifeCycle event) {
                watch.lookLater();
            }
        });
    }

    @Override
    public void onOpened(Connection connection) {
        boolean isShell = connection instanceof SslConnection; // Within it another is opened at once.
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

    private void lookLater() {
        if (connector.isRunning()) {
            var unused = connector.getScheduler().schedule(this::look, BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS);
        }
    }

    private void look() {
        try {
            for (Connection connection : open.keySet()) {
                if (connection instanceof HttpConnection http && dawdles(http)) {
                    connection.getEndPoint().close();
                }
            }
        } finally {
            lookLater();
        }
    }

    private boolean dawdles(HttpConnection connection) {
        // Covers who never comes to a request at all: a handshake, or empty lines, a byte at a time.
        if (connection.getMessagesIn() == 0) {
            return System.currentTimeMillis() - connection.getCreatedTimeStamp() > patience.toMillis();
        }
        HttpParser parser = connection.getParser();
        return parser.inHeaderState()
                && !parser.isStart()
                && System.nanoTime() - parser.getBeginNanoTime() > patience.toNanos();
    }
}
