"""Star orders by scipy's van der Corput sequence, pairs of opposite bolts by networkx's least matching, nearness to the
middle by scipy's distances."""

import json
import sys

import networkx
import numpy
import scipy.spatial.distance
import scipy.stats

question = json.load(sys.stdin)

stars = []
for count in question["rings"]:
    sequence = scipy.stats.qmc.Halton(1, scramble=False).random(count).ravel()
    stars.append([int(round(place * count)) + 1 for place in sequence])

pans = []
for places in question["pans"]:
    places = numpy.array(places)
    middle = places.mean(axis=0)
    apart = scipy.spatial.distance.cdist(2 * middle - places, places)
    graph = networkx.Graph()
    for one in range(len(places)):
        for other in range(one):
            graph.add_edge(one, other, weight=float(apart[one, other]))
    pairs = networkx.min_weight_matching(graph)
    far = scipy.spatial.distance.cdist([middle], places)[0]
    pans.append(
        {
            "least": float(sum(apart[one, other] for one, other in pairs)),
            "apart": apart.tolist(),
            "far": far.tolist(),
        }
    )
json.dump({"stars": stars, "pans": pans}, sys.stdout)
