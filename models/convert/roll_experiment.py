"""Can a roll (shoulder tilt, hip tilt, side lean of the trunk) be read from the side? Tried on clips with known truth.

    roll_experiment.py --graph pose_landmark_full.tflite --weights tuned/full.f16 --footage DIR

For every <clip>.truth.json of the folder that was filmed from the side, with its <clip>.mp4 and <clip>.frames.csv. Three ways are tried:
  world    the network's 3-D points, turned into the runway's frame by the true camera
  aligned  the same, after the one rotation per clip that brings them closest to the true joints (nobody has this; a lower bound of the error)
  picture  the places of both shoulders (hips) in the picture, with the true camera, true distance and true breadth of the shoulders (hips)
All of them get more than a real run has: the ideal square of crops.py, the true camera, true breadths.

Runway frame as in the truth: x along, y to the athlete's left, z up. Positive: left one high, trunk to the athlete's left.

The truth of the clips that this was made for has next to no roll, so a small error alone shows nothing: `yaw`, the turn of the same two lines
about the vertical, is a turn of known, larger size that moves the same points in the picture, and shows whether the way follows at all.

Writes a table in Markdown to the standard output: all numbers in degrees. Needs ffmpeg on the path, NumPy, Pillow and PyTorch.
"""
from __future__ import annotations

import argparse
import json
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Dict, Iterator, List, Tuple

import numpy as np
import torch
from PIL import Image

import tflite
from convert import CROP_PX, GRAPH_POINTS, HEAT_MAP_CELLS, tuned_graph
from crops import MARGIN, body_box, cut, read_truth
from heatmap import read_points

POINTS = {"left_shoulder": 11, "right_shoulder": 12, "left_hip": 23, "right_hip": 24}  # of the landmark graph
LIMBS = {f"{side}_{joint}": first + (side == "right")
         for joint, first in (("shoulder", 11), ("elbow", 13), ("wrist", 15), ("hip", 23), ("knee", 25), ("ankle", 27))
         for side in ("left", "right")}
SMOOTHING_S = 0.1
LEAST_SD_DEG = 0.05  # below it there is nothing to correlate
JUMP_CONTACTS = ("board", "hop_landing", "step_landing")
BATCH = 8


@dataclass
class View:
    """The true camera of one frame, and the direction in which the athlete is seen."""

    inverse: np.ndarray  # of K
    rotation: np.ndarray  # runway to camera
    translation: np.ndarray

    def ray(self, px: np.ndarray) -> np.ndarray:
        return self.inverse @ np.append(px, 1.0)

    def depth(self, place: np.ndarray) -> float:
        return float((self.rotation @ place + self.translation)[2])

    def to_runway(self, points: np.ndarray, centre_px: np.ndarray) -> np.ndarray:
        """Points in the frame of a camera that looks at centre_px, (n, 3), turned into the runway's frame."""
        return points @ turn_to(self.ray(centre_px)).T @ self.rotation


def turn_to(direction: np.ndarray) -> np.ndarray:
    """The smallest rotation that turns the optical axis into the direction (Rodrigues)."""
    unit = direction / np.linalg.norm(direction)
    v, c = np.cross([0.0, 0.0, 1.0], unit), unit[2]
    cross = np.array([[0, -v[2], v[1]], [v[2], 0, -v[0]], [-v[1], v[0], 0]])
    return np.eye(3) + cross + cross @ cross / (1 + c)


def views(truth: dict) -> List[View]:
    cameras = truth["camera"] if len(truth["camera"]) > 1 else truth["camera"] * truth["frames"]
    return [View(np.linalg.inv(np.array(c["K"])), np.array(c["R"]), np.array(c["t"])) for c in cameras]


def joint(row: Dict[str, str], name: str) -> np.ndarray:
    return np.array([float(row[f"{name}_{axis}_m"]) for axis in "xyz"])


def frames_of(clip: Path, width: int, height: int) -> Iterator[Image.Image]:
    command = ["ffmpeg", "-v", "error", "-i", str(clip), "-f", "rawvideo", "-pix_fmt", "rgb24", "-"]
    with subprocess.Popen(command, stdout=subprocess.PIPE) as process:
        while len(raw := process.stdout.read(width * height * 3)) == width * height * 3:
            yield Image.frombytes("RGB", (width, height), raw)


def seen_whole(row: Dict[str, str], width: int, height: int) -> bool:
    left, top, right, bottom = body_box(row)
    return left >= 0 and top >= 0 and right <= width and bottom <= height


def network_with_world(graph_file: Path, weights: Path | None):
    """The landmark network with all of its outputs but the segmentation; picks the heat maps and the 3-D points of an answer."""
    graph = tflite.read(graph_file)
    whole = tuned_graph(graph)
    if weights is not None:
        whole.load_flat(np.fromfile(weights, "<f2"))
    heat = whole.outputs.index(graph.output_with_shape((1, HEAT_MAP_CELLS, HEAT_MAP_CELLS, GRAPH_POINTS)))
    world = whole.outputs.index(graph.output_with_shape((1, 3 * GRAPH_POINTS)))

    def run(crops: List[np.ndarray]) -> Tuple[np.ndarray, np.ndarray]:
        with torch.no_grad():
            answer = whole(torch.from_numpy(np.stack(crops)).float() / 255.0)
        return answer[heat].numpy(), answer[world].reshape(-1, GRAPH_POINTS, 3).numpy()

    whole.eval()
    return run


@dataclass
class Look:
    """What the network said of one frame."""

    frame: int
    centre_px: np.ndarray
    world: np.ndarray  # (39, 3) metres
    places_px: Dict[str, np.ndarray]  # of the picture: the heat map's two modes, (2, 2)


def looks(clip: Path, truth: dict, rows: List[Dict[str, str]], run) -> List[Look]:
    """Of every frame in which the whole body is in the picture."""
    result, waiting = [], []

    def flush() -> None:
        heats, worlds = run([crop for *_, crop in waiting])
        for (frame, corner, side, _), heat, world in zip(waiting, heats, worlds):
            points = read_points(heat[list(POINTS.values())], CROP_PX / HEAT_MAP_CELLS)
            places = {n: corner + p[[0, 1, 4, 5]].reshape(2, 2) * side / CROP_PX for n, p in zip(POINTS, points)}
            result.append(Look(frame, corner + side / 2, world.astype(float), places))
        waiting.clear()

    width, height = truth["width"], truth["height"]
    for frame, (row, picture) in enumerate(zip(rows, frames_of(clip, width, height))):
        if not seen_whole(row, width, height):
            continue
        box = body_box(row)
        side = MARGIN * max(box[2:] - box[:2])
        corner = (box[:2] + box[2:]) / 2 - side / 2
        waiting.append((frame, corner, side, np.array(cut(picture, *corner, side, CROP_PX))))
        if len(waiting) == BATCH:
            flush()
    if waiting:
        flush()
    return result


def angles(points: Dict[str, np.ndarray]) -> Dict[str, float]:
    """Degrees, from points in the runway's frame; a line that lacks its points is left out."""
    result = {}
    for part in ("shoulder", "hip"):
        if f"left_{part}" in points:
            result.update(line_angles(part, points[f"left_{part}"] - points[f"right_{part}"]))
    if "left_hip" in points and "left_shoulder" in points:
        up = (points["left_shoulder"] + points["right_shoulder"] - points["left_hip"] - points["right_hip"]) / 2
        result["side lean"] = np.degrees(np.arctan2(up[1], up[2]))
    return result


def line_angles(part: str, line: np.ndarray) -> Dict[str, float]:
    """Of the line from right to left: tilt in the across plane, and turn about the vertical (+ left one ahead)."""
    return {
        f"{part} tilt": np.degrees(np.arctan2(line[2], abs(line[1]))),
        f"{part} yaw": np.degrees(np.arctan2(line[0], abs(line[1]))),
    }


def picture_line(view: View, left_px: np.ndarray, right_px: np.ndarray, depth: float, breadth: float, nearer: float) -> np.ndarray:
    """The line from right to left whose ends are seen there, of this length, its middle that far away.

    line = depth (l - r) + h (l + r) with the rays l and r (third coordinate 1); h from |line| = breadth. nearer: -1 when the left end is nearer to
    the camera, else +1. Seen longer than it is, the line lies in the picture's plane.
    """
    left, right = view.ray(left_px), view.ray(right_px)
    across, along = depth * (left - right), left + right
    a, b, c = along @ along, across @ along, across @ across - breadth**2
    h = (-b + nearer * np.sqrt(max(b * b - a * c, 0.0))) / a
    return (across + h * along) @ view.rotation


def best_rotation(estimates: np.ndarray, truths: np.ndarray) -> np.ndarray:
    """R with truth = R estimate in least squares (Kabsch 1976)."""
    u, _, vt = np.linalg.svd(truths.T @ estimates)
    return u @ np.diag([1, 1, np.linalg.det(u @ vt)]) @ vt


def running_median(values: np.ndarray, frames: np.ndarray, half: int) -> np.ndarray:
    return np.array([np.median(values[abs(frames - f) <= half]) for f in frames])


@dataclass
class Series:
    """One angle of one clip, by one way."""

    estimate: np.ndarray
    smooth: np.ndarray
    truth: np.ndarray
    at_contacts: np.ndarray  # indexes


def series_of_clip(folder: Path, name: str, run) -> Dict[Tuple[str, str], Series]:
    truth = json.loads((folder / f"{name}.truth.json").read_text(encoding="utf-8"))
    rows, cameras = read_truth(folder / f"{name}.frames.csv"), views(truth)
    seen = looks(folder / f"{name}.mp4", truth, rows, run)
    true_points = [{n: joint(rows[s.frame], n) for n in LIMBS} for s in seen]
    worlds = [cameras[s.frame].to_runway(s.world, s.centre_px) for s in seen]
    estimates = {
        "world": [angles({n: w[i] for n, i in POINTS.items()}) for w in worlds],
        "aligned": aligned(worlds, true_points),
        "picture": [from_picture(cameras[s.frame], s, points) for s, points in zip(seen, true_points)],
        "picture, better mode": [from_picture(cameras[s.frame], s, points, True) for s, points in zip(seen, true_points)],
    }
    truths = [angles(points) for points in true_points]
    frames = np.array([s.frame for s in seen])
    instants = [c[key] for c in truth["contacts"] if c["kind"] in JUMP_CONTACTS for key in ("touchdown_s", "toeoff_s")]
    at_contacts = np.array([abs(frames - t * truth["fps"]).argmin() for t in instants])
    result = {}
    for way, answers in estimates.items():
        for angle in answers[0]:
            values = np.array([a[angle] for a in answers])
            smooth = running_median(values, frames, round(SMOOTHING_S * truth["fps"] / 2))
            result[way, angle] = Series(values, smooth, np.array([t[angle] for t in truths]), at_contacts)
    return result


def aligned(worlds: List[np.ndarray], true_points: List[Dict[str, np.ndarray]]) -> List[Dict[str, float]]:
    order = list(LIMBS)
    estimates = np.stack([w[[LIMBS[n] for n in order]] for w in worlds])
    truths = np.stack([[p[n] for n in order] for p in true_points])
    hips = [order.index("left_hip"), order.index("right_hip")]
    estimates, truths = (p - p[:, hips].mean(1, keepdims=True) for p in (estimates, truths))
    turned = estimates @ best_rotation(estimates.reshape(-1, 3), truths.reshape(-1, 3)).T
    return [angles(dict(zip(order, points))) for points in turned]


def from_picture(view: View, look: Look, points: Dict[str, np.ndarray], better_mode: bool = False) -> Dict[str, float]:
    """With the first mode of every heat map, or with the pair of modes that comes closest to the true tilt (which nobody has)."""
    result = {}
    for part in ("shoulder", "hip"):
        left, right = points[f"left_{part}"], points[f"right_{part}"]
        depth, breadth = view.depth((left + right) / 2), np.linalg.norm(left - right)
        nearer = np.sign(view.depth(left) - view.depth(right))
        true = line_angles(part, left - right)[f"{part} tilt"]
        pairs = [(i, j) for i in range(2) for j in range(2)] if better_mode else [(0, 0)]
        answers = [
            line_angles(part, picture_line(view, look.places_px[f"left_{part}"][i], look.places_px[f"right_{part}"][j], depth, breadth, nearer))
            for i, j in pairs
        ]
        result.update(min(answers, key=lambda a: abs(a[f"{part} tilt"] - true)))
    return result


def statistics(clips: List[Series]) -> Dict[str, float]:
    """Over all frames of all clips; r, slope and scatter within the clips, each about its own mean."""
    error = np.concatenate([s.estimate - s.truth for s in clips])
    smooth = np.concatenate([s.smooth - s.truth for s in clips])
    contacts = np.concatenate([(s.smooth - s.truth)[s.at_contacts] for s in clips])
    biases = np.array([(s.estimate - s.truth).mean() for s in clips])
    estimate, smoothed, truth = (
        np.concatenate([v - v.mean() for v in values])
        for values in ([s.estimate for s in clips], [s.smooth for s in clips], [s.truth for s in clips])
    )
    within = np.concatenate([(s.smooth - s.truth) - (s.smooth - s.truth).mean() for s in clips])
    moves = truth.std() > LEAST_SD_DEG and smoothed.std() > LEAST_SD_DEG
    return {
        "truth SD": truth.std(),
        "bias": error.mean(),
        "largest clip bias": biases[abs(biases).argmax()],
        "RMS": rms(error),
        "90th pct": np.percentile(abs(error), 90),
        "RMS smooth": rms(smooth),
        "RMS smooth, clip bias off": rms(within),
        "RMS at contacts": rms(contacts),
        "90th pct at contacts": np.percentile(abs(contacts), 90),
        "r": np.corrcoef(smoothed, truth)[0, 1] if moves else np.nan,
        "slope": (smoothed @ truth) / (truth @ truth) if moves else np.nan,
    }


def rms(values: np.ndarray) -> float:
    return float(np.sqrt(np.mean(values**2)))


def trivial(clips: List[Series], value: float) -> List[Series]:
    """The same clips, answered with one number."""
    return [Series(np.full_like(s.truth, value), np.full_like(s.truth, value), s.truth, s.at_contacts) for s in clips]


def print_table(clips: List[Dict[Tuple[str, str], Series]]) -> None:
    names = None
    for way, angle in clips[0]:
        of_angle = [c[way, angle] for c in clips]
        lines = {way: of_angle}
        if way == "world":
            mean = float(np.concatenate([s.truth for s in of_angle]).mean())
            lines = {"always 0": trivial(of_angle, 0.0), "mean of all clips": trivial(of_angle, mean), **lines}
        for label, series in lines.items():
            numbers = statistics(series)
            if names is None:
                names = list(numbers)
                print("| angle | way | " + " | ".join(names) + " |")
                print("|---" * (len(names) + 2) + "|")
            cells = ["" if np.isnan(v) else f"{v:.2f}" for v in numbers.values()]
            print(f"| {angle} | {label} | " + " | ".join(cells) + " |")


def main(arguments: List[str]) -> None:
    parser = argparse.ArgumentParser(description="Tries to read a roll from the side, on clips with known truth.")
    parser.add_argument("--graph", type=Path, required=True, help="the published .tflite file")
    parser.add_argument("--weights", type=Path, help="tuned weights, fp16; none: the published ones")
    parser.add_argument("--footage", type=Path, required=True, help="folder with <clip>.mp4, <clip>.truth.json and <clip>.frames.csv")
    options = parser.parse_args(arguments)
    run = network_with_world(options.graph, options.weights)
    clips = []
    for file in sorted(options.footage.glob("*.truth.json")):
        if json.loads(file.read_text(encoding="utf-8"))["view"] == "side":
            clips.append(series_of_clip(options.footage, file.name[: -len(".truth.json")], run))
            frames = len(next(iter(clips[-1].values())).truth)
            print(f"{file.name[: -len('.truth.json')]}: {frames} frames", file=sys.stderr)
    if not clips:
        raise SystemExit(f"{options.footage}: no clips from the side with a truth")
    print_table(clips)


if __name__ == "__main__":
    main(sys.argv[1:])
