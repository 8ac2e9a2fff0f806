package polewright.sky.fields;

import java.util.Optional;
import polewright.sky.body.SkyBody;

/** Looks up a star given only by name in a file. */
@FunctionalInterface
public interface BodyNames {
    /**
     * Finds no star by name, so that every star must come with its position. Sufficient for anything Polewright itself
     * wrote.
     */
    BodyNames NONE = name -> Optional.empty();

    /**
     * The body with that name; empty if there is none.
     *
     * @throws polewright.sky.InputRefused instead of an empty result if the message can help further, e.g. with similar
     *     names
     */
    Optional<? extends SkyBody> find(String name);
}
