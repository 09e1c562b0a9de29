"""Builds the same network in PyTorch from the graph of a TensorFlow Lite file."""
from __future__ import annotations

from dataclasses import dataclass
from typing import Callable, Dict, List, Optional, Tuple

import numpy as np
import torch
import torch.nn.functional as F
from torch import nn

from tflite import Graph, Operator

ACTIVATIONS = {0: None, 1: "relu", 3: "relu6"}  # ActivationFunctionType of the schema
VALID = 1  # of the schema's Padding; the other one is SAME


@dataclass(frozen=True)
class Step:
    """One computation: takes the tensors named by inputs, writes the one named by output."""

    inputs: List[int]
    output: int
    compute: Callable[..., torch.Tensor]
    activation: Optional[str] = None


class TorchGraph(nn.Module):
    """The graph as a PyTorch module: in (N, H, W, 3) numbers as the graph wants them, out a tuple of its outputs.

    Four-dimensional tensors are kept channels first inside (as PyTorch has them) and given out channels first as well; flat outputs keep the
    order of the original (row, column, channel). Convolutions are ordinary nn.Conv2d, in order of execution in self.convolutions.
    """

    def __init__(self, graph: Graph, outputs: List[int]):
        super().__init__()
        self.graph = graph
        self.outputs = outputs
        self.convolutions = nn.ModuleList()
        self.steps: List[Step] = []
        self._constants: Dict[int, np.ndarray] = {
            i: t.data for i, t in enumerate(graph.tensors) if t.data is not None
        }
        self._paddings: Dict[int, Tuple[int, int]] = {}  # padded tensor -> (its source, px on every side)
        for operator in graph.needed_for(outputs):
            getattr(self, "_add_" + operator.kind.lower())(operator)

    def restricted_to(self, outputs: List[int]) -> "TorchGraph":
        """The same module (sharing its weights) without what the outputs do not need."""
        wanted, kept = set(outputs), []
        for step in reversed(self.steps):
            if step.output in wanted:
                kept.append(step)
                wanted.update(step.inputs)
        smaller = TorchGraph.__new__(TorchGraph)
        nn.Module.__init__(smaller)
        smaller.graph, smaller.outputs, smaller.steps = self.graph, outputs, kept[::-1]
        used = [step.compute for step in smaller.steps if isinstance(step.compute, nn.Conv2d)]
        smaller.convolutions = nn.ModuleList(used)
        return smaller

    def load_flat(self, values: np.ndarray) -> None:
        """Replaces all weights: every convolution in order of execution, weight (out, in / groups, rows, columns) then bias."""
        expected = sum(p.numel() for p in self.parameters())
        if len(values) != expected:
            raise ValueError(f"the weights file should have {expected} values, has {len(values)}")
        flat, at = torch.from_numpy(values.astype(np.float32)), 0
        for parameter in self.parameters():
            parameter.data.copy_(flat[at : at + parameter.numel()].reshape(parameter.shape))
            at += parameter.numel()

    def forward(self, x: torch.Tensor) -> Tuple[torch.Tensor, ...]:
        values = {self.graph.inputs[0]: x.permute(0, 3, 1, 2)}
        for step in self.steps:
            result = step.compute(*(values[i] for i in step.inputs))
            if step.activation == "relu6":
                result = F.hardtanh(result, 0.0, 6.0)
            elif step.activation == "relu":
                result = F.relu(result)
            values[step.output] = result
        return tuple(values[i] for i in self.outputs)

    # ---- one method per operator of the schema -------------------------------------------------------------------------------------

    def _add_dequantize(self, operator: Operator) -> None:
        self._constants[operator.outputs[0]] = self._constants[operator.inputs[0]].astype(np.float32)

    def _add_densify(self, operator: Operator) -> None:
        self._constants[operator.outputs[0]] = self._constants[operator.inputs[0]]

    def _add_pad(self, operator: Operator) -> None:
        batch, rows, columns, channels = self._constants[operator.inputs[1]].tolist()
        if batch != [0, 0]:
            raise ValueError("PAD over the batch is not supported")
        if channels == [0, 0] and rows == columns and rows[0] == rows[1]:
            # Goes into the convolution that follows: fewer copies, same numbers.
            self._paddings[operator.outputs[0]] = (operator.inputs[0], rows[0])
            return
        self._pad(operator.inputs[0], operator.outputs[0], (*columns, *rows, *channels))

    def _pad(self, source: int, target: int, widths: Tuple[int, ...]) -> None:
        self.steps.append(Step([source], target, lambda x: F.pad(x, widths)))

    def _add_conv_2d(self, operator: Operator) -> None:
        weight = self._constants[operator.inputs[1]].transpose(0, 3, 1, 2)  # out, rows, columns, in
        activation, dilation = operator.options.scalar(3, "b"), (4, 5)
        groups = self._shape(operator.inputs[0])[3] // weight.shape[1]
        self._convolve(operator, weight, groups, activation, dilation)

    def _add_depthwise_conv_2d(self, operator: Operator) -> None:
        weight = self._constants[operator.inputs[1]].transpose(3, 0, 1, 2)  # 1, rows, columns, channels
        activation, dilation = operator.options.scalar(4, "b"), (5, 6)
        channels = self._shape(operator.inputs[0])[3]
        if weight.shape[0] != channels:
            raise ValueError("a depth multiplier is not supported")
        self._convolve(operator, weight, channels, activation, dilation)

    def _convolve(self, operator: Operator, weight: np.ndarray, groups: int, activation: int, dilation) -> None:
        options = operator.options
        if any(options.scalar(field, "i", 1) != 1 for field in dilation):
            raise ValueError("dilated convolutions are not supported")
        stride_x, stride_y = options.scalar(1, "i"), options.scalar(2, "i")
        source, padding = self._padding(operator, weight.shape[2:], (stride_y, stride_x))
        bias = self._constants[operator.inputs[2]]
        convolution = nn.Conv2d(
            weight.shape[1] * groups, weight.shape[0], weight.shape[2:], (stride_y, stride_x), padding, groups=groups
        )
        convolution.weight.data = torch.from_numpy(np.ascontiguousarray(weight)).float()
        convolution.bias.data = torch.from_numpy(bias.copy()).float()
        self.convolutions.append(convolution)
        self.steps.append(Step([source], operator.outputs[0], convolution, ACTIVATIONS[activation]))

    def _padding(self, operator: Operator, kernel, stride) -> Tuple[int, Tuple[int, int]]:
        """The source tensor of a convolution and its padding (rows, columns)."""
        source = operator.inputs[0]
        mode = operator.options.scalar(0, "b")
        if source in self._paddings:
            if mode != VALID:
                raise ValueError("SAME after PAD is not supported")
            source, width = self._paddings[source]
            return source, (width, width)
        if mode == VALID:
            return source, (0, 0)
        rows, columns = (same_padding(n, k, s) for n, k, s in zip(self._shape(source)[1:3], kernel, stride))
        if rows[0] == rows[1] and columns[0] == columns[1]:
            return source, (rows[0], columns[0])
        padded = -operator.outputs[0] - 1  # a name that no tensor of the file has
        self._pad(source, padded, (*columns, *rows))
        return padded, (0, 0)

    def _add_add(self, operator: Operator) -> None:
        self._plain(operator, lambda x, y: x + y, ACTIVATIONS[operator.options.scalar(0, "b")])

    def _add_logistic(self, operator: Operator) -> None:
        self._plain(operator, torch.sigmoid)

    def _add_resize_bilinear(self, operator: Operator) -> None:
        align_corners, half_pixel_centres = operator.options.scalar(2, "?"), operator.options.scalar(3, "?")
        if align_corners or not half_pixel_centres:
            raise ValueError("RESIZE_BILINEAR is supported with half-pixel centres only")
        before, after = self._shape(operator.inputs[0]), self._shape(operator.outputs[0])
        factor = after[1] / before[1]
        if after[2] / before[2] != factor:
            raise ValueError("RESIZE_BILINEAR is supported with one factor only")

        def enlarge(x: torch.Tensor) -> torch.Tensor:
            return F.interpolate(
                x, scale_factor=factor, mode="bilinear", align_corners=False, recompute_scale_factor=False
            )

        self.steps.append(Step(operator.inputs[:1], operator.outputs[0], enlarge))

    def _add_max_pool_2d(self, operator: Operator) -> None:
        options = operator.options
        sizes = [options.scalar(field, "i") for field in (1, 2, 3, 4)]  # strides, then the window
        _, rows, columns, _ = self._shape(operator.inputs[0])
        if sizes != [2, 2, 2, 2] or rows % 2 or columns % 2:  # even sizes: SAME and VALID are the same
            raise ValueError("MAX_POOL_2D is supported as 2x2 with stride 2 on even sizes only")
        self._plain(operator, lambda x: F.max_pool2d(x, 2, 2))

    def _add_reshape(self, operator: Operator) -> None:
        shape = (-1, *self._shape(operator.outputs[0])[1:])
        spatial = len(self._shape(operator.inputs[0])) == 4

        def flatten(x: torch.Tensor) -> torch.Tensor:
            return (x.permute(0, 2, 3, 1) if spatial else x).reshape(shape)

        self.steps.append(Step(operator.inputs[:1], operator.outputs[0], flatten))

    def _add_depth_to_space(self, operator: Operator) -> None:
        block = operator.options.scalar(0, "i")
        _, rows, columns, channels = self._shape(operator.outputs[0])

        def spread(x: torch.Tensor) -> torch.Tensor:
            # The channel of the original is (row in block, column in block, channel).
            split = x.reshape(-1, block, block, channels, rows // block, columns // block)
            return split.permute(0, 3, 4, 1, 5, 2).reshape(-1, channels, rows, columns)

        self._plain(operator, spread)

    def _add_concatenation(self, operator: Operator) -> None:
        if len(self._shape(operator.outputs[0])) == 4:
            raise ValueError("CONCATENATION of pictures is not supported")
        axis = operator.options.scalar(0, "i")
        self._plain(operator, lambda *parts: torch.cat(parts, axis))

    def _plain(self, operator: Operator, compute, activation: Optional[str] = None) -> None:
        if any(i in self._paddings for i in operator.inputs):
            raise ValueError(f"PAD before {operator.kind} is not supported")
        self.steps.append(Step(operator.inputs, operator.outputs[0], compute, activation))

    def _shape(self, tensor: int) -> Tuple[int, ...]:
        return self.graph.tensors[tensor].shape


def same_padding(size: int, kernel: int, stride: int) -> Tuple[int, int]:
    """Padding before and after for the SAME rule of TensorFlow: ceil(size / stride) outputs, the odd pixel at the end."""
    outputs = -(-size // stride)
    total = max((outputs - 1) * stride + kernel - size, 0)
    return total // 2, total - total // 2
