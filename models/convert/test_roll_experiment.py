"""Drawn cases for the geometry of roll_experiment.py; expected values by hand or by projecting a known line."""
import unittest

import numpy as np

from roll_experiment import View, angles, best_rotation, picture_line, running_median, turn_to

# A camera 20 m to the right of the runway, 1 m up, that looks across it: x of the picture along the runway, y down, depth to the athlete's left.
ACROSS = np.array([[1.0, 0, 0], [0, 0, -1], [0, 1, 0]])
VIEW = View(np.linalg.inv(np.diag([1000.0, 1000.0, 1.0])), ACROSS, np.array([0.0, 1.0, 20.0]))


def pixel(place: np.ndarray) -> np.ndarray:
    x, y, depth = VIEW.rotation @ place + VIEW.translation
    return 1000 * np.array([x, y]) / depth


class RollExperimentTest(unittest.TestCase):
    def test_a_high_left_shoulder_is_a_positive_tilt(self):
        points = {"left_shoulder": np.array([0.0, 0.2, 1.5]), "right_shoulder": np.array([0.0, -0.2, 1.4])}
        self.assertAlmostEqual(angles(points)["shoulder tilt"], np.degrees(np.arctan(0.25)))

    def test_a_trunk_to_the_left_is_a_positive_lean(self):
        points = {f"{s}_{j}": np.array([0.0, y, z]) for s in ("left", "right") for j, y, z in (("hip", 0.0, 1.0), ("shoulder", 0.05, 1.5))}
        self.assertAlmostEqual(angles(points)["side lean"], np.degrees(np.arctan(0.1)))

    def test_a_line_is_found_again_from_where_its_ends_are_seen(self):
        for tilt, yaw in ((0, 0), (8, 0), (-8, 5), (3, -20)):
            t, w = np.radians([tilt, yaw])
            half = 0.2 * np.array([np.cos(t) * np.sin(w), np.cos(t) * np.cos(w), np.sin(t)])
            middle = np.array([3.0, 0.1, 1.4])
            found = picture_line(VIEW, pixel(middle + half), pixel(middle - half), VIEW.depth(middle), 0.4, +1)
            np.testing.assert_allclose(found, 2 * half, atol=1e-6)

    def test_the_optical_axis_is_turned_into_the_direction(self):
        direction = np.array([0.3, -0.2, 1.0])
        turn = turn_to(direction)
        np.testing.assert_allclose(turn @ [0, 0, 1], direction / np.linalg.norm(direction), atol=1e-12)
        np.testing.assert_allclose(turn @ turn.T, np.eye(3), atol=1e-12)

    def test_points_that_were_only_turned_are_turned_back(self):
        points = np.random.default_rng(1).normal(size=(20, 3))
        turn = turn_to(np.array([1.0, 0.5, 0.7]))
        np.testing.assert_allclose(best_rotation(points @ turn, points), turn, atol=1e-9)

    def test_the_running_median_goes_by_frames_and_not_by_rows(self):
        values = np.array([0.0, 9.0, 0.0, 5.0])
        np.testing.assert_allclose(running_median(values, np.array([0, 1, 2, 10]), 1), [4.5, 0.0, 4.5, 5.0])


if __name__ == "__main__":
    unittest.main()
