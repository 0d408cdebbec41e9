// What the page on torque explains.
import type { PageWords } from "./description";

export const page: PageWords = {
  about: "What the engine sends and what the tyres hold, and what that does to tube, joint and bearings.",
  purpose: [
    "A shaft carries the smaller of two torques: what comes in the lowest gear, and what goes out before the wheels slip. Which of them to go by is a question of use; both are given.",
    "The tube is held against first yield, the joint against a rating where you have one. This chart has sizes, not ratings.",
  ],
  groups: {
    carry: "What is carried",
    engine: "Engine and gears",
    wheels: "Axle and tyres",
    shaft: "The tube",
    joint: "The joint",
  },
  hints: {
    by: "What the parts on tube and joint go on with.",
    torque: "As measured or as its maker states it.",
    row: "Such as 1310: the chart is looked up for a published rating.",
    rating: "From the maker’s catalogue, for this use and angle.",
    engine: "From its data sheet.",
    rated: "Data sheets say which; gross is without fan and alternator.",
    gearbox: "The two sources take different losses for them.",
    gear: "Engine over gearbox output.",
    stall: "From the converter’s data; 1 without one.",
    transfer: "Leave it out without a transfer case.",
    load: "What stands on that axle, as a weighbridge shows it, with what shifts there when pulling away.",
    tyre: "From the ground to the middle of the wheel, loaded.",
    axle: "Turns of the shaft for one of the wheel.",
    friction: "The printed form takes 0.71; a steel wheel on a rail has far less.",
    efficiency: "The printed form takes 0.95.",
    outside: "Across the tube.",
    wall: "Of the tube, as bought.",
    yield: "Tensile yield strength.",
    shear: "For the twist only.",
    length: "For the twist only.",
    angle: "As it runs; the page on angles works it out.",
    radius: "Half of the distance between the middles of two opposite caps’ needles.",
    spline: "Half of the pitch diameter, for the push a loaded slip makes.",
    machine: "Small bored joints of machines have a factor for their angle.",
  },
  example:
    "An invented rail inspection trolley: 150 N·m from a car engine, 1200 kg on a tractor axle with road tyres, a 3 in tube. The yield strength is made up.",
};
