"""Motion of the links and the axle: numbers only, no vehicle and no session.

In: Pivot centres, lengths of arms, heave and roll: mm and rad, arrays that broadcast.
Out: Axle shift, steer, toe and steering-wheel angle; poses, travel limits, road events.
"""
