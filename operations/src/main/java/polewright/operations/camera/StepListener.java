package polewright.operations.camera;

/** Told of each step of a longer piece of work as it begins. */
@FunctionalInterface
public interface StepListener {
    void begun(String step);
}
