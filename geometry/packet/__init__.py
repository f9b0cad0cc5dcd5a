"""Sheets for paper: the packet of a design, its lifting card, and gauges in true size."""

from geometry.packet.card import card_pdf
from geometry.packet.gauge import gauge_dxf, gauge_pdf, gauge_svg
from geometry.packet.packet import packet_pdf

__all__ = ["card_pdf", "gauge_dxf", "gauge_pdf", "gauge_svg", "packet_pdf"]
