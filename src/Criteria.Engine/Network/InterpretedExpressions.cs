using System.Linq.Expressions;
using NRules.Extensibility;

namespace Criteria.Engine.Network;

/// <summary>Runs the expressions of rules without making machine code of them.</summary>
/// <remarks>Making the code takes longer than the whole assessment of one case; running it is what pays off over many.</remarks>
internal sealed class InterpretedExpressions : IExpressionCompiler
{
    public TDelegate Compile<TDelegate>(Expression<TDelegate> expression)
        where TDelegate : Delegate => expression.Compile(preferInterpretation: true);
}
