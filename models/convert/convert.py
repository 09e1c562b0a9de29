"""Makes the networks that the product ships from the published graphs.

    convert.py detector   --graph pose_detection.tflite --out detector.pt
    convert.py landmarks  --graph pose_landmark_full.tflite --weights tuned/full.f16 --out full.pt
    convert.py references landmarks --graph ... --weights ... --pictures DIR --out DIR
    convert.py references detector  --graph ... --pictures DIR --out DIR
    convert.py put-weights --graph pose_landmark_full.tflite --weights tuned/full.f16 --out full-tuned.tflite

`references` writes what the network must answer on every picture of a folder, computed in double precision by PyTorch's own kernels (not
XNNPACK): the stored answers of the self-test. `put-weights` writes the tuned weights into a copy of the published graph, so that another
runtime can be compared with the converted network.

The result is TorchScript whose convolutions are calls of the XNNPACK kernels inside libtorch (that is what optimize_for_mobile does), because
ordinary traced networks go through another library that was measured to give wrong numbers on some processors. Same inputs, same version of
PyTorch: same bytes.
"""
from __future__ import annotations

import argparse
import hashlib
import io
import json
import os
import sys
import zipfile
from pathlib import Path
from typing import List, Tuple

import numpy as np
import torch
from torch import nn
from torch.utils.mobile_optimizer import optimize_for_mobile

import tflite
from heatmap import read_points
from network import TorchGraph

BODY_POINTS = 33  # of the landmark graph's 39: the rest places the next crop, which the product does on its own
GRAPH_POINTS = 39
HEAT_MAP_CELLS = 64
CROP_PX = 256
DETECTOR_PX = 224
ANCHORS = 2254
LARGEST_DIFFERENCE = 1e-3  # of the tensor's maximum, between the graph as built and as optimised
SAMPLE_STRIDE = 61  # the references keep every 61st number: a prime, so that all rows, columns and points are met


class LandmarkNetwork(nn.Module):
    """In: (N, 256, 256, 3) bytes, RGB. Out: (N, 33, 64, 64) logits, one heat map per body point, a cell is 4 px."""

    def __init__(self, graph: TorchGraph):
        super().__init__()
        self.graph = graph

    def forward(self, x: torch.Tensor) -> torch.Tensor:
        heat_maps = self.graph(as_numbers(x, self.graph) * (1.0 / 255.0))[0]
        return heat_maps[:, :BODY_POINTS].contiguous()


class DetectorNetwork(nn.Module):
    """In: (N, 224, 224, 3) bytes, RGB. Out: (N, 2254, 12) box and key points against the anchors in px, (N, 2254, 1) score logits."""

    def __init__(self, graph: TorchGraph):
        super().__init__()
        self.graph = graph

    def forward(self, x: torch.Tensor) -> Tuple[torch.Tensor, ...]:
        boxes, scores = self.graph(as_numbers(x, self.graph) * (2.0 / 255.0) - 1.0)
        return boxes, scores


def as_numbers(x: torch.Tensor, graph: TorchGraph) -> torch.Tensor:
    return x.to(next(graph.parameters()).dtype)


def landmark_network(graph_file: Path, weights_file: Path | None) -> LandmarkNetwork:
    """The network with tuned weights, or with the published ones when there is no weights file."""
    graph = tflite.read(graph_file)
    heat_map = graph.output_with_shape((1, HEAT_MAP_CELLS, HEAT_MAP_CELLS, GRAPH_POINTS))
    if weights_file is None:
        return LandmarkNetwork(TorchGraph(graph, [heat_map])).eval()
    whole = tuned_graph(graph)
    whole.load_flat(np.fromfile(weights_file, "<f2"))
    return LandmarkNetwork(whole.restricted_to([heat_map])).eval()


def tuned_graph(graph: tflite.Graph) -> TorchGraph:
    """The part of the landmark graph that the weights file covers: all but the segmentation."""
    segmentation = graph.output_with_shape((1, CROP_PX, CROP_PX, 1))
    return TorchGraph(graph, [t for t in graph.outputs if t != segmentation])


def detector_network(graph_file: Path) -> DetectorNetwork:
    graph = tflite.read(graph_file)
    outputs = [graph.output_with_shape((1, ANCHORS, 12)), graph.output_with_shape((1, ANCHORS, 1))]
    return DetectorNetwork(TorchGraph(graph, outputs)).eval()


def write_torchscript(network: nn.Module, size_px: int, out: Path) -> None:
    """Traces, optimises, checks that the numbers stayed, and writes the file."""
    torch.manual_seed(1)
    pictures = torch.randint(0, 256, (2, size_px, size_px, 3), dtype=torch.uint8)
    with torch.no_grad():
        script = optimize_for_mobile(torch.jit.trace(network, pictures, check_trace=False))
        for built, optimised in zip(tensors(network(pictures)), tensors(script(pictures))):
            difference = float((built - optimised).abs().max() / built.abs().max())
            if not difference < LARGEST_DIFFERENCE:
                raise ValueError(f"optimised network is off by {difference:.2e} of the tensor's maximum")
    buffer = io.BytesIO()
    torch.jit.save(script, buffer)
    write_moved(out, reproducible_archive(buffer.getvalue()))


def tensors(result) -> Tuple[torch.Tensor, ...]:
    return result if isinstance(result, tuple) else (result,)


def reproducible_archive(archive: bytes) -> bytes:
    """The same TorchScript archive with fixed times and stored entries, and without the debug entries, which hold paths of this machine."""
    target = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(archive)) as source, zipfile.ZipFile(target, "w", zipfile.ZIP_STORED) as result:
        for name in source.namelist():
            if not name.endswith(".debug_pkl"):
                entry = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
                entry.create_system = 0
                result.writestr(entry, source.read(name))
    return target.getvalue()


def write_moved(out: Path, content: bytes) -> None:
    temporary = out.with_name(out.name + ".part")
    temporary.write_bytes(content)
    os.replace(temporary, out)
    print(f"{hashlib.sha256(content).hexdigest()}  {out.name}  {len(content)} bytes")


def write_references(network: nn.Module, size_px: int, pictures: Path, out: Path) -> None:
    """One JSON file per PNG picture of the folder: samples of every output tensor and, for heat maps, the points read from them."""
    network = network.double()
    files = sorted(pictures.glob("*.png"))
    if not files:
        raise ValueError(f"{pictures}: no PNG pictures")
    for file in files:
        rgb = read_picture(file, size_px)
        with torch.no_grad(), torch.backends.mkldnn.flags(enabled=False):
            results = [t.numpy() for t in tensors(network(torch.from_numpy(rgb[None])))]
        reference = {"stride": SAMPLE_STRIDE, "tensors": [sampled(t) for t in results]}
        if isinstance(network, LandmarkNetwork):
            points = read_points(results[0][0], CROP_PX / HEAT_MAP_CELLS)
            reference["points"] = [[rounded(v, 5) for v in row] for row in points]
        text = json.dumps(reference).replace('"tensors"', '\n"tensors"').replace('"points"', '\n"points"')
        write_moved(out / (file.stem + ".json"), (text + "\n").encode())


def sampled(tensor: np.ndarray) -> dict:
    flat = tensor.reshape(-1)
    values = [rounded(v, 7) for v in flat[::SAMPLE_STRIDE]]
    return {"count": flat.size, "max": rounded(abs(flat).max(), 7), "values": values}


def rounded(value: float, digits: int) -> float:
    """The number with so many significant digits."""
    return float(f"{value:.{digits}g}")


def read_picture(file: Path, size_px: int) -> np.ndarray:
    from PIL import Image  # only needed here

    rgb = np.array(Image.open(file).convert("RGB"))
    if rgb.shape != (size_px, size_px, 3):
        raise ValueError(f"{file}: {size_px} x {size_px} px expected, is {rgb.shape[1]} x {rgb.shape[0]}")
    return rgb


def put_weights(graph_file: Path, weights_file: Path, out: Path) -> None:
    """Overwrites the half-precision constants of the convolutions in a copy of the graph."""
    graph = tflite.read(graph_file)
    whole = tuned_graph(graph)
    values, at = np.fromfile(weights_file, "<f2"), 0
    stored = {o.outputs[0]: graph.tensors[o.inputs[0]] for o in graph.operators if o.kind == "DEQUANTIZE"}
    result = bytearray(graph.file)
    for operator in graph.needed_for(whole.outputs):
        if operator.kind not in ("CONV_2D", "DEPTHWISE_CONV_2D"):
            continue
        for constant in (stored[i] for i in operator.inputs[1:3]):
            count = int(np.prod(constant.shape))
            new = channels_last(values[at : at + count], constant.shape, operator.kind)
            result[constant.position : constant.position + 2 * count] = new.astype("<f2").tobytes()
            at += count
    if at != len(values):
        raise ValueError(f"{weights_file}: {at} values expected, has {len(values)}")
    write_moved(out, bytes(result))


def channels_last(values: np.ndarray, shape: Tuple[int, ...], kind: str) -> np.ndarray:
    """From PyTorch's order of a weight (or bias) to the file's."""
    if len(shape) == 1:
        return values
    first, rows, columns, last = shape
    if kind == "DEPTHWISE_CONV_2D":
        return values.reshape(last, first, rows, columns).transpose(1, 2, 3, 0)
    return values.reshape(first, last, rows, columns).transpose(0, 2, 3, 1)


def main(arguments: List[str]) -> None:
    parser = argparse.ArgumentParser(description="Makes the networks that the product ships from the published graphs.")
    commands = parser.add_subparsers(dest="command", required=True)
    for name in ("detector", "landmarks", "references", "put-weights"):
        command = commands.add_parser(name)
        if name == "references":
            command.add_argument("kind", choices=("detector", "landmarks"))
            command.add_argument("--pictures", type=Path, required=True, help="folder of PNG pictures of the input size")
        command.add_argument("--graph", type=Path, required=True, help="the published .tflite file")
        command.add_argument("--weights", type=Path, required=name == "put-weights", help="tuned weights, fp16; none: the published ones")
        command.add_argument("--out", type=Path, required=True)
    options = parser.parse_args(arguments)
    if options.command == "put-weights":
        put_weights(options.graph, options.weights, options.out)
        return
    detector = "detector" in (options.command, getattr(options, "kind", None))
    network = detector_network(options.graph) if detector else landmark_network(options.graph, options.weights)
    size_px = DETECTOR_PX if detector else CROP_PX
    if options.command == "references":
        write_references(network, size_px, options.pictures, options.out)
    else:
        write_torchscript(network, size_px, options.out)


if __name__ == "__main__":
    main(sys.argv[1:])
