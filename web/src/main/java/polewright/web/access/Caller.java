package polewright.web.access;

import io.javalin.http.Context;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.server.internal.HttpConnection;
import org.eclipse.jetty.util.BufferUtil;

/** Who waits for an answer at the other end of a connection, while the answer is made. For one thread, the request's own. */
public final class Caller {
    private static final int FIRST_OF_THE_NEXT_BYTES = 512;

    private final Context ctx;
    private boolean hasAskedForMore;

    public Caller(Context ctx) {
        this.ctx = ctx;
    }

    /**
     * Whether the client has gone. The web server itself notices only when it writes.
     *
     * <p>Only for a request that has no body, or whose body has been read: what comes after it is the end of the connection,
     * or a client's next request, which is left for the server to read.
     */
    public boolean hasGone() {
        if (hasAskedForMore
                || !(ServletContextRequest.getServletContextRequest(ctx.req())
                                .getConnectionMetaData()
                                .getConnection()
                        instanceof HttpConnection connection)) {
            return false;
        }
        ByteBuffer next = BufferUtil.allocate(FIRST_OF_THE_NEXT_BYTES);
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
