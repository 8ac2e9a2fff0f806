package polewright.operations.camera;

/** Receives each step of a longer computation as it begins. */
@FunctionalInterface
public interface StepListener {
    void begun(String step);
}
