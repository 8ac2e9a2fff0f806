package polewright.bench.pages;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The network between a device and the server, which can be cut: all connections at once, and no new ones for a
 * while.
 */
final class BreakingNetwork implements AutoCloseable {
    private final ServerSocket here;
    private final String host;
    private final int port;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private volatile boolean isDown;

    private BreakingNetwork(ServerSocket here, String host, int port) {
        this.here = here;
        this.host = host;
        this.port = port;
    }

    /** Leads to a server. */
    static BreakingNetwork to(String host, int port) throws IOException {
        BreakingNetwork network =
                new BreakingNetwork(new ServerSocket(0, 64, InetAddress.getLoopbackAddress()), host, port);
        started("network", network::accept);
        return network;
    }

    private static void started(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    /** Its entry on this machine. */
    int port() {
        return here.getLocalPort();
    }

    private void accept() {
        while (!here.isClosed()) {
            try {
                Socket device = here.accept();
                if (isDown) {
                    device.close();
                } else {
                    connect(device);
                }
            } catch (IOException closed) {
                // The caller tries again.
            }
        }
    }

    private void connect(Socket device) throws IOException {
        Socket server = new Socket(host, port);
        open.add(device);
        open.add(server);
        started("network, up", () -> carry(device, server));
        started("network, down", () -> carry(server, device));
    }

    private void carry(Socket from, Socket to) {
        try (from;
                to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            byte[] buffer = new byte[16_384];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                out.write(buffer, 0, read);
            }
        } catch (IOException cut) {
            // Both ends see it.
        } finally {
            open.remove(from);
            open.remove(to);
        }
    }

    /** Cuts the open connections, and admits no new ones until {@link #restore}. */
    void cut() {
        isDown = true;
        for (Socket socket : open) {
            try {
                // A reset, as from a router that forgot the connection, not a browser's orderly close.
                socket.setSoLinger(true, 0);
                socket.close();
            } catch (IOException closedAlready) {
                // It is cut already.
            }
        }
    }

    void restore() {
        isDown = false;
    }

    @Override
    public void close() throws IOException {
        here.close();
        cut();
    }
}
