package polewright.web.access;

import io.javalin.http.Context;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.server.internal.HttpConnection;
import org.eclipse.jetty.util.BufferUtil;

/** The client waiting for a response. To be used only by the request's own thread. */
public final class Caller {
    private static final int PEEK_BYTES = 512;

    private final Context ctx;
    private boolean hasAskedForMore;

    public Caller(Context ctx) {
        this.ctx = ctx;
    }

    /**
     * Whether the client has disconnected. The web server itself notices only when it writes.
     *
     * <p>Only for a request without a body, or whose body has been read: what follows is either the end of the
     * connection or the client's next request, which is left for the server to read.
     */
    public boolean hasGone() {
        if (hasAskedForMore
                || !(ServletContextRequest.getServletContextRequest(ctx.req())
                                .getConnectionMetaData()
                                .getConnection()
                        instanceof HttpConnection connection)) {
            return false;
        }
        ByteBuffer next = BufferUtil.allocate(PEEK_BYTES);
        try {
            int bytes = connection.getEndPoint().fill(next);
            if (bytes > 0) {
                hasAskedForMore = true;
                connection.onUpgradeTo(next);
            }
            return bytes < 0;
        } catch (IOException broken) {
            return true;
        }
    }
}
