"""Cuts square pictures with known truth out of clips whose truth is known.

    crops.py landmarks --clip jump.mp4 --truth jump.frames.csv --frames 60,101 --out DIR --stature 1.86
    crops.py detector  --clip jump.mp4 --truth jump.frames.csv --frames 60,101 --out DIR --tiles 3

`landmarks` cuts the ideal square: centred on the box around all true points of the body, its side 1.25 times the longer side of that box, scaled to
256 px. It writes <clip>-<frame>.png and adds a row to truth.csv: picture, standing height of the athlete in px of the crop, then x and y of
every joint in px of the crop ((0, 0) is the outer corner of the first pixel).
`detector` cuts the square tile of 1 / tiles of the picture's width around the athlete, scaled to 224 px.

Needs ffmpeg on the path, NumPy and Pillow.
"""
from __future__ import annotations

import argparse
import csv
import subprocess
import sys
from pathlib import Path
from typing import Dict, List, Tuple

import numpy as np
from PIL import Image

CROP_PX, DETECTOR_PX = 256, 224
MARGIN = 1.25
JOINTS = ["shoulder", "elbow", "wrist", "hip", "knee", "ankle", "heel", "toe"]


def read_truth(file: Path) -> List[Dict[str, str]]:
    with file.open(newline="") as stream:
        return list(csv.DictReader(stream))


def read_frame(clip: Path, frame: int, width: int, height: int) -> Image.Image:
    """One frame, upright, by its number in the clip."""
    command = ["ffmpeg", "-v", "error", "-i", str(clip), "-vf", f"select=eq(n\\,{frame})", "-frames:v", "1"]
    raw = subprocess.run(command + ["-f", "rawvideo", "-pix_fmt", "rgb24", "-"], check=True, capture_output=True)
    return Image.frombytes("RGB", (width, height), raw.stdout)


def picture_size(clip: Path) -> Tuple[int, int]:
    command = ["ffmpeg", "-v", "error", "-i", str(clip), "-frames:v", "1", "-f", "image2pipe", "-c:v", "ppm", "-"]
    header = subprocess.run(command, check=True, capture_output=True).stdout[:30].split()
    return int(header[1]), int(header[2])


def body_box(row: Dict[str, str]) -> np.ndarray:
    """Left, top, right, bottom of all true points, px of the picture."""
    names = [k[:-3] for k in row if k.endswith("_px") and k != "com_px"]
    points = np.array([[float(row[f"{n}_px"]), float(row[f"{n}_py"])] for n in names])
    return np.concatenate([points.min(0), points.max(0)])


def cut(picture: Image.Image, left: float, top: float, side: float, size_px: int) -> Image.Image:
    """The square, black outside the picture, interpolated (bicubic)."""
    return picture.transform(
        (size_px, size_px), Image.AFFINE, (side / size_px, 0, left, 0, side / size_px, top), Image.BICUBIC
    )


def body_scale(row: Dict[str, str], side: float) -> float:
    """Px of the crop per metre, from the distances of the true joints in the picture's plane (thigh and shank of both legs)."""
    metres = px = 0.0
    for a, b in (("left_hip", "left_knee"), ("left_knee", "left_ankle"), ("right_hip", "right_knee"), ("right_knee", "right_ankle")):
        metres += np.hypot(float(row[f"{a}_x_m"]) - float(row[f"{b}_x_m"]), float(row[f"{a}_z_m"]) - float(row[f"{b}_z_m"]))
        px += np.hypot(float(row[f"{a}_px"]) - float(row[f"{b}_px"]), float(row[f"{a}_py"]) - float(row[f"{b}_py"]))
    return px / metres * CROP_PX / side


def main(arguments: List[str]) -> None:
    parser = argparse.ArgumentParser(description="Cuts square pictures with known truth out of clips.")
    parser.add_argument("kind", choices=("landmarks", "detector"))
    parser.add_argument("--clip", type=Path, required=True)
    parser.add_argument("--truth", type=Path, required=True)
    parser.add_argument("--frames", required=True, help="numbers of frames, separated by commas")
    parser.add_argument("--stature", type=float, help="standing height of the athlete, metres")
    parser.add_argument("--tiles", type=int, default=1)
    parser.add_argument("--out", type=Path, required=True)
    options = parser.parse_args(arguments)
    rows, (width, height) = read_truth(options.truth), picture_size(options.clip)
    options.out.mkdir(parents=True, exist_ok=True)
    for frame in map(int, options.frames.split(",")):
        row = rows[frame]
        picture = read_frame(options.clip, frame, width, height)
        name = f"{options.clip.stem}-{frame}"
        box = body_box(row)
        side = width / options.tiles if options.kind == "detector" else MARGIN * max(box[2:] - box[:2])
        left, top = (box[:2] + box[2:]) / 2 - side / 2
        size_px = CROP_PX if options.kind == "landmarks" else DETECTOR_PX
        cut(picture, left, top, side, size_px).save(options.out / f"{name}.png", optimize=True)
        if options.kind == "landmarks":
            add_truth(options.out / "truth.csv", name, row, options.stature, left, top, side)


def add_truth(file: Path, name: str, row: Dict[str, str], stature: float, left: float, top: float, side: float) -> None:
    joints = [f"{s}_{j}" for j in JOINTS for s in ("left", "right")]
    header = ["picture", "standing_height_px"] + [f"{j}_{axis}_px" for j in joints for axis in "xy"]
    numbers = [stature * body_scale(row, side)]
    for joint in joints:
        numbers += [(float(row[f"{joint}_px"]) - left) * CROP_PX / side, (float(row[f"{joint}_py"]) - top) * CROP_PX / side]
    new = not file.exists()
    with file.open("a", newline="", encoding="utf-8") as stream:
        writer = csv.writer(stream, lineterminator="\n")
        if new:
            writer.writerow(header)
        writer.writerow([name] + [f"{v:.2f}" for v in numbers])


if __name__ == "__main__":
    main(sys.argv[1:])
