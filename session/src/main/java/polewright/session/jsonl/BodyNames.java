package polewright.session.jsonl;

import java.util.Optional;
import polewright.sky.body.SkyBody;

/** Where a file's reader looks up a star that is given by its name alone. */
@FunctionalInterface
public interface BodyNames {
    /** Knows no name, so that every star must come with its place. Enough for whatever Polewright wrote itself. */
    BodyNames NONE = name -> Optional.empty();

    /**
     * The body of that name; empty when there is none.
     *
     * @throws polewright.sky.InputRefused instead of an empty answer, when there is more to say, e.g. names that are near
     */
    Optional<? extends SkyBody> find(String name);
}
